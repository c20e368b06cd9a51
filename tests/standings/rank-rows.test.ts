import { expect, test } from 'vitest';
import { createRandom } from '#lib/kit/random.ts';
import { rankRows } from '#lib/standings/rank-rows.ts';

function ranksOf(
  rows: readonly (readonly [solverId: number, points: number, solved: number])[],
): [number, number, boolean][] {
  return rankRows(rows.map(([solverId, points, solved]) => ({ solverId, points, solved }))).map((row) => [
    row.solverId,
    row.rank,
    row.isShared,
  ]);
}

test('[S1] ties share a rank and the next counts them: 1, 2, 2, 4', () => {
  expect(
    ranksOf([
      [7, 3, 1],
      [9, 10, 2],
      [4, 5, 1],
      [2, 5, 1],
    ]),
  ).toEqual([
    [9, 1, false],
    [2, 2, true],
    [4, 2, true],
    [7, 4, false],
  ]);
});

test('[S1] equal points are parted by the number solved', () => {
  expect(
    ranksOf([
      [1, 5, 0],
      [2, 5, 1],
    ]),
  ).toEqual([
    [2, 1, false],
    [1, 2, false],
  ]);
});

test('[S1] all equal: everybody is first; nobody: no rows', () => {
  expect(
    ranksOf([
      [3, 0, 0],
      [1, 0, 0],
      [2, 0, 0],
    ]).map(([, rank]) => rank),
  ).toEqual([1, 1, 1]);
  expect(ranksOf([])).toEqual([]);
});

test('[S1] against a count from scratch: a rank is one more than the number who stand higher (seed 42)', () => {
  const random = createRandom(42);
  const rows = Array.from({ length: 500 }, (_, solverId) => ({
    solverId,
    points: random.int(20),
    solved: random.int(4),
  }));
  for (const row of rankRows(rows)) {
    const higher = rows.filter(
      (one) => one.points > row.points || (one.points === row.points && one.solved > row.solved),
    );
    expect(row.rank).toBe(higher.length + 1);
  }
});
