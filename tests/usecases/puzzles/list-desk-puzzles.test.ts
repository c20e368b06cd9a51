import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { loadOpenRegrade } from '#lib/store/regrades.ts';
import { askRegrade } from '#lib/usecases/answers/decide-regrade.ts';
import { runRegrade } from '#lib/usecases/answers/run-regrade.ts';
import { listDeskPuzzles } from '#lib/usecases/puzzles/list-desk-puzzles.ts';
import { buildMarked } from '../../support/build-regrade.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test("[A8] the list holds this show's episodes with their puzzles, and proposes the next number", async () => {
  const here = await buildShow();
  await buildPuzzle(await buildShow());
  const open = await buildPuzzle(here);
  const draft = await buildPuzzle(here, { isPublished: false });
  const list = await listDeskPuzzles(here.showId);
  expect(
    list.episodes.map((episode) => [episode.number, episode.lines.map((line) => [line.id, line.state])]),
  ).toEqual([
    [
      1,
      [
        [draft.puzzleId, 'draft'],
        [open.puzzleId, 'open'],
      ],
    ],
  ]);
  expect([list.nextNumber, list.hasSample]).toEqual([2, false]);
});

test('[A8] sample episodes are marked and do not count for the next number', async () => {
  const { showId, seasonId } = await buildShow();
  await db().episode.create({ data: { showId, seasonId, number: 77, title: 'Invented', isSample: true } });
  const list = await listDeskPuzzles(showId);
  expect([list.nextNumber, list.hasSample]).toEqual([2, true]);
});

test('[A7] a regrade that waits for the host stands in the list, and only with its puzzle', async () => {
  const { puzzleId, memberId, showId, ...place } = await buildMarked();
  const other = await buildPuzzle({ showId, ...place });
  const waits = async () => {
    const lines = (await listDeskPuzzles(showId)).episodes.flatMap((episode) => episode.lines);
    return Object.fromEntries(lines.map((line) => [line.id, line.hasRegrade]));
  };
  await askRegrade({ puzzleId, memberId, reason: 'again' });
  expect(await waits(), 'not worked out yet').toEqual({ [puzzleId]: false, [other.puzzleId]: false });
  await runRegrade((await loadOpenRegrade(db(), puzzleId))?.id ?? 0);
  expect(await waits()).toEqual({ [puzzleId]: true, [other.puzzleId]: false });
});
