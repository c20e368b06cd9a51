import { afterAll, expect, test } from 'vitest';
import { enqueue } from '#lib/queue/enqueue.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { buildPuzzle, buildShow } from '../support/build-show.ts';
import { givenDatabase } from '../support/database.ts';
import { ownEngineIn } from '../support/uci-programs/program-file.ts';
import { startWorker, type WorkerProcess } from '../support/worker-process.ts';

const database = givenDatabase();
let worker: WorkerProcess | null = null;
afterAll(async () => worker?.stop());

test('a worker whose operator named a program asks it after verification, and the verdict is ours', {
  timeout: 60_000,
}, async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
  await enqueue(db(), 'verify-puzzle', { puzzleId });
  worker = startWorker(database, { UCI_PROGRAM: ownEngineIn(database.dataDir) });
  await worker.waitFor('the worker is ready');
  await expect
    .poll(async () => (await loadPuzzle(db(), { id: puzzleId }))?.secondOpinion, {
      timeout: 50_000,
      interval: 250,
    })
    .toMatchObject({ kind: 'move', move: 'a1a8', mateIn: 1 });
  expect((await loadPuzzle(db(), { id: puzzleId }))?.claim).toBe('true');
});
