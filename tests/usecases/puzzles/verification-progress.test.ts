import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { beginProgress, loadProgress } from '#lib/store/progress.ts';
import { followVerification } from '#lib/usecases/puzzles/verification-progress.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('numbers come from the running work: jobs under way count with their nodes, ended ones with their rows', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
  await beginProgress(db(), puzzleId, 'running');
  const follower = followVerification(puzzleId);
  const job = [{ fen: '', position: '', movesLeft: 1, move: 'a1a8' }];
  follower.expect(1);
  follower.progressOf(job)({ stage: 'refutations', done: 0, total: 1, nodes: 700 });
  await expect
    .poll(() => loadProgress(db(), puzzleId), { timeout: 10_000 })
    .toMatchObject({ stage: 'refutations', done: 0, total: 1, nodes: 700, verdicts: 0 });
  const row = { ...job[0], nodes: 1200 };
  follower.found([{ ...EMPTY, ...row }], job);
  await follower.end();
  expect(await loadProgress(db(), puzzleId)).toMatchObject({ done: 1, total: 1, nodes: 1200, verdicts: 1 });
});

const EMPTY = {
  position: '',
  movesLeft: 1,
  move: '',
  verdict: 'slips' as const,
  mateIn: null,
  value: null,
  depth: 0,
  nodes: 0,
  evidence: { kind: 'budget' as const },
  replies: [],
  adequate: [],
  evident: null,
  stillWinning: null,
  check: 'passed' as const,
  engineVersion: 'test',
};
