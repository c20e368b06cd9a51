import { afterEach, expect, test } from 'vitest';
import { parseOpinion } from '#lib/book/explain-opinion.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { buildPuzzle, buildShow } from '../support/build-show.ts';
import { givenDatabase } from '../support/database.ts';
import { oddProgramIn, ownEngineIn } from '../support/uci-programs/program-file.ts';
import { startWorker, type WorkerProcess } from '../support/worker-process.ts';

const database = givenDatabase();
let worker: WorkerProcess | null = null;
afterEach(async () => worker?.stop());

async function keptFault(puzzleId: number): Promise<string | undefined> {
  const opinion = parseOpinion((await loadPuzzle(db(), { id: puzzleId }))?.secondOpinion);
  return opinion?.kind === 'none' ? opinion.fault : undefined;
}

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

test('[F10] a program that fails three times in a row is set aside, until the worker starts anew', {
  timeout: 120_000,
}, async () => {
  const show = await buildShow();
  const ids: number[] = [];
  for (let n = 0; n < 5; n += 1) ids.push((await buildPuzzle(show, { isPublished: false })).puzzleId);
  const [fourth = 0, fifth = 0] = ids.slice(3);
  const settings = { UCI_PROGRAM: oddProgramIn(database.dataDir, 'dies') };
  worker = startWorker(database, settings);
  await worker.waitFor('the worker is ready');
  for (const puzzleId of ids.slice(0, 3)) await enqueue(db(), 'second-opinion', { puzzleId });
  const patience = { timeout: 30_000, interval: 100 };
  await expect
    .poll(() => Promise.all(ids.slice(0, 3).map(keptFault)), patience)
    .toEqual(['ended', 'ended', 'ended']);
  await worker.waitFor('the program is set aside');
  await enqueue(db(), 'second-opinion', { puzzleId: fourth });
  await expect.poll(() => keptFault(fourth), patience).toBe('set-aside');
  await worker.stop();
  worker = startWorker(database, settings);
  await worker.waitFor('the worker is ready');
  await enqueue(db(), 'second-opinion', { puzzleId: fifth });
  await expect.poll(() => keptFault(fifth), patience).toBe('ended');
});
