import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import type { Lacking } from '#lib/book/book-row.ts';
import { db } from '#lib/store/client.ts';
import { beginProgress, loadProgress } from '#lib/store/progress.ts';
import { followVerification } from '#lib/usecases/puzzles/verification-progress.ts';
import { BACK_RANK, buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

const JOB: readonly Lacking[] = ['a1a8', 'g1f1'].map((move) => ({
  fen: BACK_RANK,
  position: BACK_RANK.split(' ').slice(0, 4).join(' '),
  movesLeft: 1,
  move,
}));

async function follow() {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
  await beginProgress(db(), puzzleId, 'running');
  return { puzzleId, follower: followVerification(puzzleId) };
}

test('numbers under way are written while the work runs, and its own nodes once it is done', async () => {
  const { puzzleId, follower } = await follow();
  follower.expect(JOB.length);
  follower.progressOf(JOB)({ stage: 'refutations', done: 0, total: 2, nodes: 777 });
  await wait(700);
  expect(await loadProgress(db(), puzzleId)).toMatchObject({
    state: 'running',
    stage: 'refutations',
    done: 0,
    total: 2,
    nodes: 777,
  });
  const rows = await verifyHere({ terms: MATE_IN_ONE, lacking: JOB });
  follower.found(rows, JOB);
  await follower.end();
  expect(await loadProgress(db(), puzzleId)).toMatchObject({
    done: 2,
    total: 2,
    verdicts: 2,
    nodes: rows.reduce((sum, row) => sum + row.nodes, 0),
  });
});

test('rows that were there before count as expected and done', async () => {
  const { puzzleId, follower } = await follow();
  follower.found(await verifyHere({ terms: MATE_IN_ONE, lacking: JOB }));
  follower.expect(5);
  await follower.end();
  expect(await loadProgress(db(), puzzleId)).toMatchObject({ done: 2, total: 7, verdicts: 2 });
});

test('after its end nothing more is written', async () => {
  const { puzzleId, follower } = await follow();
  await follower.end();
  const before = await loadProgress(db(), puzzleId);
  follower.expect(100);
  await wait(500);
  expect(await loadProgress(db(), puzzleId)).toEqual(before);
});
