import { describe, expect, test } from 'vitest';
import { isOpenAt, timelinessOf } from '#lib/puzzle/is-open-at.ts';

const opensAt = new Date('2026-11-20T18:00:00Z');
const closesAt = new Date('2026-11-27T18:00:00Z');
const puzzle = { opensAt, closesAt };

describe('[P2] an answer is in time from the opening on and up to, not at, the close', () => {
  const rows: [string, number, boolean][] = [
    ['the millisecond before the opening', opensAt.getTime() - 1, false],
    ['the opening itself belongs to the interval', opensAt.getTime(), true],
    ['the millisecond before the close', closesAt.getTime() - 1, true],
    ['the close itself does not', closesAt.getTime(), false],
    ['a day later', closesAt.getTime() + 86_400_000, false],
  ];
  test.each(rows)('[P2] %s', (_why, at, expected) => {
    expect(isOpenAt(puzzle, new Date(at))).toBe(expected);
  });

  test('[P2] a puzzle without a close is never open', () => {
    expect(isOpenAt({ opensAt, closesAt: null }, opensAt)).toBe(false);
  });
});

describe('[P2] a coarse time is an interval', () => {
  const rows: [string, string, string, string][] = [
    ['ends before the close', '2026-11-25T00:00:00Z', '2026-11-26T00:00:00Z', 'in-time'],
    [
      'holds the close, so it counts with a flag',
      '2026-11-27T12:00:00Z',
      '2026-11-28T12:00:00Z',
      'uncertain',
    ],
    ['touches the close with its last moment', '2026-11-27T12:00:00Z', '2026-11-27T18:00:00Z', 'uncertain'],
    ['begins at the close', '2026-11-27T18:00:00Z', '2026-11-28T18:00:00Z', 'late'],
    ['lies before the opening', '2026-11-18T00:00:00Z', '2026-11-19T00:00:00Z', 'early'],
    ['holds the opening: may have been after it', '2026-11-20T12:00:00Z', '2026-11-20T20:00:00Z', 'in-time'],
  ];
  test.each(rows)('[P2] an interval that %s', (_why, from, to, expected) => {
    expect(timelinessOf(puzzle, { from: new Date(from), to: new Date(to) })).toBe(expected);
  });
});
