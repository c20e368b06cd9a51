import { describe, expect, test } from 'vitest';
import { instantOf, isZone, offsetMinutes, parseWallTime, wallTimeIn } from '#lib/kit/zoned-time.ts';

function momentOf(text: string, zone: string): string {
  const wall = parseWallTime(text);
  if (wall === null) return 'no time';
  const found = instantOf(wall, zone);
  switch (found.kind) {
    case 'one':
      return found.at.toISOString();
    case 'skipped':
      return `skipped, then ${found.after.toISOString()}`;
    case 'twice':
      return `${found.at.toISOString()} or ${found.second.toISOString()}`;
  }
}

describe('[P2] a close is a moment, named by wall time and zone', () => {
  const rows: [string, string, string, string][] = [
    ['winter', '2026-11-27T18:00', 'Europe/Berlin', '2026-11-27T17:00:00.000Z'],
    ['summer', '2026-07-01T18:00', 'Europe/Berlin', '2026-07-01T16:00:00.000Z'],
    ['half an hour off', '2026-07-01T18:00', 'Asia/Kolkata', '2026-07-01T12:30:00.000Z'],
    ['UTC', '2026-07-01 18:00:30', 'UTC', '2026-07-01T18:00:30.000Z'],
    [
      'an hour that the spring night skips',
      '2026-03-29T02:30',
      'Europe/Berlin',
      'skipped, then 2026-03-29T01:30:00.000Z',
    ],
    [
      'an hour that the autumn night has twice',
      '2026-10-25T02:30',
      'Europe/Berlin',
      '2026-10-25T00:30:00.000Z or 2026-10-25T01:30:00.000Z',
    ],
    [
      'the first minute after the skipped hour',
      '2026-03-29T03:00',
      'Europe/Berlin',
      '2026-03-29T01:00:00.000Z',
    ],
    ['a southern spring', '2026-10-04T02:15', 'Australia/Sydney', 'skipped, then 2026-10-03T16:15:00.000Z'],
    ['a day that no month has', '2026-02-30T10:00', 'UTC', 'no time'],
    ['an hour that no day has', '2026-02-20T24:00', 'UTC', 'no time'],
  ];
  test.each(rows)('[P2] %s', (_why, text, zone, expected) => {
    expect(momentOf(text, zone)).toBe(expected);
  });

  test('[P2] a moment and its wall time go round, for every hour of a year in a zone with summer time', () => {
    for (let hour = 0; hour < 366 * 24; hour += 7) {
      const moment = new Date(Date.UTC(2026, 0, 1, hour, 17, 5));
      const found = instantOf(wallTimeIn(moment, 'America/New_York'), 'America/New_York');
      const hits = found.kind === 'twice' ? [found.at, found.second] : found.kind === 'one' ? [found.at] : [];
      expect(hits.map((hit) => hit.getTime())).toContain(moment.getTime());
    }
  });

  test('[P2] zones are names of the time zone tables', () => {
    expect(['Europe/Berlin', 'UTC', 'America/Argentina/Buenos_Aires'].map(isZone)).toEqual([
      true,
      true,
      true,
    ]);
    expect(['', 'Mars/Olympus', '<script>', 'x'.repeat(200)].map(isZone)).toEqual([
      false,
      false,
      false,
      false,
    ]);
    expect(offsetMinutes(new Date('2026-07-01T00:00:00Z'), 'Europe/Berlin')).toBe(120);
  });
});
