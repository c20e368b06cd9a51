import { expect, test } from 'vitest';
import { climbLadder } from '#lib/standings/ladder.ts';

const rows: [string, number[], number, { points: number; tops: number[] }][] = [
  ['on the way up', [5, 2, 0], 20, { points: 7, tops: [] }],
  ['reaching the target exactly', [5, 5, 5, 5], 20, { points: 0, tops: [3] }],
  ['points beyond the target are not carried over', [5, 4, 5], 12, { points: 0, tops: [2] }],
  ['a second climb starts from zero', [5, 5, 5, 2], 10, { points: 7, tops: [1] }],
  ['topped twice', [10, 10, 1], 10, { points: 1, tops: [0, 1] }],
];

test.each(rows)('[S2] %s', (_why, points, target, expected) => {
  expect(climbLadder(points, target)).toEqual(expected);
});
