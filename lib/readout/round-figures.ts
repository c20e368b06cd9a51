// How are people counted on the air? In round figures and shares that an ear can take in.

/** A count for the ear: the rounded number, and whether it differs from the true one. */
export interface RoundCount {
  readonly people: number;
  readonly isRounded: boolean;
}

/**
 * Rounds a number of people: exact below 20, to tens below 100, beyond that to one leading figure,
 * to halves of it where that figure is 1 (150, 1,500), because 149 is not "a hundred".
 */
export function roundPeople(people: number): RoundCount {
  const unit = people < 20 ? 1 : people < 100 ? 10 : 10 ** Math.floor(Math.log10(people));
  const step = people >= 100 && people < 2 * unit ? unit / 2 : unit;
  const rounded = Math.round(people / step) * step;
  return { people: rounded, isRounded: rounded !== people };
}

/** A share that can be said in words; names of messages in the catalogue. */
export type ShareName =
  | 'none'
  | 'few'
  | 'tenth'
  | 'fifth'
  | 'quarter'
  | 'third'
  | 'half'
  | 'two-thirds'
  | 'three-quarters'
  | 'nearly-all'
  | 'all';

const SHARES: readonly (readonly [ShareName, number])[] = [
  ['few', 0.03],
  ['tenth', 0.1],
  ['fifth', 0.2],
  ['quarter', 0.25],
  ['third', 1 / 3],
  ['half', 0.5],
  ['two-thirds', 2 / 3],
  ['three-quarters', 0.75],
  ['nearly-all', 0.93],
];

/** The nearest share in words; `none` and `all` only where exact. `of` is at least 1. */
export function nearestShare(part: number, of: number): ShareName {
  if (part <= 0) return 'none';
  if (part >= of) return 'all';
  const share = part / of;
  let best = SHARES[0];
  for (const one of SHARES) {
    if (best === undefined || Math.abs(one[1] - share) < Math.abs(best[1] - share)) best = one;
  }
  return best?.[0] ?? 'few';
}
