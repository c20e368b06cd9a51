import { expect, test } from 'vitest';
import { sayMoment, sayOffset, sayTimeLeft } from '../../app/_ui/say-times.ts';

const CLOSE = new Date('2026-11-27T17:00:00Z');

test('a closing time names day, hour and its offset from UTC', () => {
  expect(sayMoment(CLOSE, 'Europe/Vienna', 'en')).toBe('Friday 27 November, 18:00 UTC+1');
  expect(sayMoment(CLOSE, 'Europe/Vienna', 'de')).toBe('Freitag, 27. November, 18:00 UTC+1');
});

const OFFSETS: [string, string][] = [
  ['UTC', 'UTC'],
  ['Asia/Kolkata', 'UTC+5:30'],
  ['America/St_Johns', 'UTC−3:30'],
  ['America/New_York', 'UTC−5'],
];
test.each(OFFSETS)('the offset of %s in winter is said %s', (zone, said) => {
  expect(sayOffset(CLOSE, zone)).toBe(said);
});

const LEFT: [number, string][] = [
  [59_000, 'under a minute left'],
  [60_000, '1 minute left'],
  [3_599_000, '59 minutes left'],
  [3_600_000, '1 hour left'],
  [47 * 3_600_000, '47 hours left'],
  [48 * 3_600_000, '2 days left'],
  [71 * 3_600_000, '2 days left'],
];
test.each(LEFT)('%i ms before the close it says "%s": never more than there is', (ms, said) => {
  expect(sayTimeLeft(new Date(CLOSE.getTime() - ms), CLOSE, 'en')).toBe(said);
});
