/** The settings of the dial, in seconds. */
export const LENGTHS = [30, 60, 90] as const;

/** Words a minute, where the host has not set a pace. */
const USUAL_PACE = 150;

/** The length that is asked for; a minute where it is none of the dial's. */
export function lengthOf(asked: unknown): (typeof LENGTHS)[number] {
  return LENGTHS.find((length) => String(length) === asked) ?? 60;
}

/** The pace that is asked for, from 60 to 260 words a minute. */
export function paceOf(asked: unknown): number {
  const pace = typeof asked === 'string' && /^\d{2,3}$/.test(asked) ? Number(asked) : USUAL_PACE;
  return Math.min(260, Math.max(60, pace));
}
