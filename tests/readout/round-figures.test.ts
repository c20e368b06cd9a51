import { expect, test } from 'vitest';
import { nearestShare, roundPeople } from '#lib/readout/round-figures.ts';

const counts: [number, number, boolean][] = [
  [0, 0, false],
  [1, 1, false],
  [19, 19, false],
  [20, 20, false],
  [23, 20, true],
  [96, 100, true],
  [100, 100, false],
  [149, 150, true],
  [174, 150, true],
  [176, 200, true],
  [617, 600, true],
  [960, 1000, true],
  [1499, 1500, true],
  [23_456, 20_000, true],
];
test.each(counts)('[S3] %i people are said as %i', (people, said, isRounded) => {
  expect(roundPeople(people)).toEqual({ people: said, isRounded });
});

const shares: [number, number, string][] = [
  [0, 600, 'none'],
  [1, 600, 'few'],
  [30, 600, 'few'],
  [70, 600, 'tenth'],
  [200, 600, 'third'],
  [290, 600, 'half'],
  [410, 600, 'two-thirds'],
  [599, 600, 'nearly-all'],
  [600, 600, 'all'],
  [1, 1, 'all'],
];
test.each(shares)('[S3] %i of %i is "%s"', (part, of, name) => {
  expect(nearestShare(part, of)).toBe(name);
});
