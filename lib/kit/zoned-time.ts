// Which moment is a wall-clock time in a time zone? Hours that a zone skips or repeats (summer time)
// are told apart, because a close at 02:30 in such a night means nothing, or two things.

/** A wall-clock time, months from 1. */
export interface WallTime {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
}

/** The moment a wall time names: one, none (skipped by the zone), or two (repeated), earlier first. */
export type ZonedInstant =
  | { readonly kind: 'one'; readonly at: Date }
  | { readonly kind: 'skipped'; readonly after: Date }
  | { readonly kind: 'twice'; readonly at: Date; readonly second: Date };

/** Whether a text is a time zone that this machine's tables know (an IANA name or UTC). */
export function isZone(text: string): boolean {
  if (!/^[A-Za-z][A-Za-z0-9_+\-/]{1,60}$/.test(text)) return false;
  try {
    new Intl.DateTimeFormat('en', { timeZone: text });
    return true;
  } catch {
    return false;
  }
}

/** The moment of a wall time in a zone that `isZone` accepts. Offsets are probed a day to either side. */
export function instantOf(wall: WallTime, zone: string): ZonedInstant {
  const asUtc = Date.UTC(wall.year, wall.month - 1, wall.day, wall.hour, wall.minute, wall.second);
  const before = asUtc - offsetMs(asUtc - 86_400_000, zone);
  const after = asUtc - offsetMs(asUtc + 86_400_000, zone);
  const fits = [...new Set([before, after])]
    .filter((at) => at + offsetMs(at, zone) === asUtc)
    .sort((a, b) => a - b);
  const [first, second] = fits;
  if (first === undefined) return { kind: 'skipped', after: new Date(Math.max(before, after)) };
  if (second === undefined) return { kind: 'one', at: new Date(first) };
  return { kind: 'twice', at: new Date(first), second: new Date(second) };
}

/** The wall time of a moment in a zone. */
export function wallTimeIn(moment: Date, zone: string): WallTime {
  const parts = new Map(
    new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      hourCycle: 'h23',
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      second: '2-digit',
    })
      .formatToParts(moment)
      .map((part) => [part.type, Number(part.value)]),
  );
  const of = (type: Intl.DateTimeFormatPartTypes): number => parts.get(type) ?? 0;
  return {
    year: of('year'),
    month: of('month'),
    day: of('day'),
    hour: of('hour'),
    minute: of('minute'),
    second: of('second'),
  };
}

/** How far the zone's clock stands ahead of UTC at a moment, in minutes. */
export function offsetMinutes(moment: Date, zone: string): number {
  return offsetMs(moment.getTime(), zone) / 60_000;
}

/**
 * Parses `2026-11-27T18:00`, with a blank for the T and with seconds if wanted; null where it is no
 * such text or names a day that no month has.
 */
export function parseWallTime(text: string): WallTime | null {
  const found = /^(\d{4})-(\d{2})-(\d{2})[T ](\d{2}):(\d{2})(?::(\d{2})(?:\.\d{1,9})?)?$/.exec(text.trim());
  if (found === null) return null;
  const [year, month, day, hour, minute, second] = found.slice(1).map((part) => Number(part ?? 0));
  if (year === undefined || month === undefined || day === undefined) return null;
  const wall = { year, month, day, hour: hour ?? 0, minute: minute ?? 0, second: second ?? 0 };
  const back = new Date(Date.UTC(year, month - 1, day, wall.hour, wall.minute, wall.second));
  const isReal =
    back.getUTCMonth() + 1 === month &&
    back.getUTCDate() === day &&
    wall.hour < 24 &&
    wall.minute < 60 &&
    wall.second < 60;
  return isReal ? wall : null;
}

function offsetMs(at: number, zone: string): number {
  const whole = Math.floor(at / 1000) * 1000;
  const wall = wallTimeIn(new Date(whole), zone);
  return Date.UTC(wall.year, wall.month - 1, wall.day, wall.hour, wall.minute, wall.second) - whole;
}
