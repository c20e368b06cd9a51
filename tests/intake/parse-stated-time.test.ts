import { describe, expect, test } from 'vitest';
import { parseStatedTime, saysEdited } from '#lib/intake/parse-stated-time.ts';

const frame = { exportedAt: new Date('2026-11-28T12:00:00Z'), zone: 'Europe/Berlin' };

function spanOf(text: string): string {
  const at = parseStatedTime(text, frame);
  if (at === null) return 'no time';
  return at.from.getTime() === at.to.getTime()
    ? at.from.toISOString()
    : `${at.from.toISOString()} to ${at.to.toISOString()}`;
}

describe('[P2] exact times', () => {
  const rows: [string, string, string][] = [
    ['ISO in UTC', '2026-11-27T17:59:59Z', '2026-11-27T17:59:59.000Z'],
    ['ISO with an offset', '2026-11-27T18:59:59+01:00', '2026-11-27T17:59:59.000Z'],
    ['an offset without a colon, a blank for the T', '2026-11-27 18:59:59 +0100', '2026-11-27T17:59:59.000Z'],
    ['milliseconds', '2026-11-27T17:59:59.123Z', '2026-11-27T17:59:59.123Z'],
    ["no zone: the frame's", '2026-11-27 18:59', '2026-11-27T17:59:00.000Z'],
    ['seconds since 1970', '1764266399', '2025-11-27T17:59:59.000Z'],
    ['milliseconds since 1970', '1764266399000', '2025-11-27T17:59:59.000Z'],
    ['a day that no month has', '2026-02-30T10:00:00Z', 'no time'],
    ['words', 'last Tuesday', 'no time'],
    ['a number alone is no time', '42', 'no time'],
    ['nothing', '  ', 'no time'],
  ];
  test.each(rows)('[P2] %s', (_why, text, expected) => {
    expect(spanOf(text)).toBe(expected);
  });
});

describe('[P2] coarse times are intervals counted back from the export', () => {
  const rows: [string, string, string][] = [
    [
      'two days: at least two whole days, fewer than three',
      '2 days ago',
      '2026-11-25T12:00:00.000Z to 2026-11-26T12:00:00.000Z',
    ],
    ['the same in German', 'vor 2 Tagen', '2026-11-25T12:00:00.000Z to 2026-11-26T12:00:00.000Z'],
    ['edited, said behind it', '2 days ago (edited)', '2026-11-25T12:00:00.000Z to 2026-11-26T12:00:00.000Z'],
    ['one as a word', 'an hour ago', '2026-11-28T10:00:00.000Z to 2026-11-28T11:00:00.000Z'],
    ['one as a word in German', 'vor einer Stunde', '2026-11-28T10:00:00.000Z to 2026-11-28T11:00:00.000Z'],
    ['a month has 28 to 31 days', '1 month ago', '2026-09-27T12:00:00.000Z to 2026-10-31T12:00:00.000Z'],
    ['short form', '3h ago', '2026-11-28T08:00:00.000Z to 2026-11-28T09:00:00.000Z'],
    [
      "a date alone is that whole day in the frame's zone",
      '2026-11-27',
      '2026-11-26T23:00:00.000Z to 2026-11-27T22:59:59.999Z',
    ],
    [
      'an hour that the zone repeats is both',
      '2026-10-25 02:30',
      '2026-10-25T00:30:00.000Z to 2026-10-25T01:30:00.000Z',
    ],
    ['a length without "ago" is no time', '2 days', 'no time'],
    ['nor is a move', 'vor e4', 'no time'],
  ];
  test.each(rows)('[P2] %s', (_why, text, expected) => {
    expect(spanOf(text)).toBe(expected);
  });

  test('[T3] a source that says "edited" is believed', () => {
    expect(saysEdited('2 days ago (edited)')).toBe(true);
    expect(saysEdited('vor 2 Tagen (bearbeitet)')).toBe(true);
    expect(saysEdited('2 days ago')).toBe(false);
  });
});
