import { expect, test } from 'vitest';
import { stateAt } from '#lib/puzzle/puzzle-state.ts';
import { db } from '#lib/store/client.ts';
import { findBrokenLog } from '#lib/store/log.ts';
import { listPuzzles } from '#lib/store/puzzles.ts';
import { askForSample, makeSample, removeSample } from '#lib/usecases/puzzles/make-sample.ts';
import { buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

test('makes an invented show with two episodes that are over and one that is open, by the ordinary deeds', async () => {
  expect((await makeSample({ memberId: null, verify: verifyHere })).ok).toBe(true);
  const show = await db().show.findFirstOrThrow();
  const puzzles = await listPuzzles(db(), show.id);
  expect(puzzles.map((puzzle) => stateAt(puzzle, puzzle.now))).toEqual(['open', 'revealed', 'revealed']);
  expect(puzzles.map((puzzle) => puzzle.claim)).toEqual(['true', 'true', 'true']);
  for (const puzzle of puzzles) {
    const solved = await db().mark.count({
      where: { puzzleId: puzzle.id, isCurrent: true, outcome: 'solved' },
    });
    expect(solved, puzzle.title).toBeGreaterThanOrEqual(3);
  }
  const late = await db().answer.findMany({ where: { standing: 'late' } });
  expect(late.map((answer) => answer.name)).toEqual(['Caspar Nightingale']);
  expect(await db().answer.count({ where: { work: { not: 'done' } } })).toBe(0);
  expect(await findBrokenLog(db())).toEqual([]);
});

test('made twice, by a worker that was killed in between, it is there once', async () => {
  await makeSample({ memberId: null, verify: verifyHere });
  expect(await db().episode.count()).toBe(3);
});

test('is refused where any episode exists, and removed as a whole', async () => {
  expect(await askForSample({ memberId: null })).toEqual({ ok: false, reason: { code: 'episodes-exist' } });
  expect(await removeSample({ memberId: null })).toBe(3);
  for (const count of [db().episode.count(), db().answer.count(), db().solver.count(), db().source.count()])
    expect(await count).toBe(0);
  await buildShow();
  expect((await makeSample({ memberId: null, verify: verifyHere })).ok).toBe(false);
  expect(await removeSample({ memberId: null })).toBe(0);
  expect(await db().episode.count()).toBe(1);
});
