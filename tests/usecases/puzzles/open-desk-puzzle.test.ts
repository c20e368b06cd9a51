import { expect, test } from 'vitest';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('[A8] a puzzle opens at the desk of its own show and at no other', async () => {
  const [here, there] = [await buildShow(), await buildShow()];
  const { puzzleId } = await buildPuzzle(here);
  const opened = await openDeskPuzzle(here.showId, puzzleId);
  expect([opened?.record.id, opened?.state, opened?.doubtful]).toEqual([puzzleId, 'open', 0]);
  expect(await openDeskPuzzle(there.showId, puzzleId)).toBeNull();
});

test('[A8] numbers that are none open nothing and ask the database nothing', async () => {
  const { showId } = await buildShow();
  for (const id of [0, -1, 1.5, Number.NaN, 2 ** 31, Number.MAX_SAFE_INTEGER]) {
    expect(await openDeskPuzzle(showId, id)).toBeNull();
  }
});
