// A regrade in the real worker, with the real queue: previewed, written at one stroke, and whole whenever a
// worker is killed on the way.

import { afterEach, expect, test } from 'vitest';
import { sleep } from '#lib/machine/clock.ts';
import { db } from '#lib/store/client.ts';
import { findBrokenLog } from '#lib/store/log.ts';
import { loadOpenRegrade, loadRegrade, type RegradeState } from '#lib/store/regrades.ts';
import { agreeToRegrade, askRegrade } from '#lib/usecases/answers/decide-regrade.ts';
import { buildMarked, marksOf, ruleAgainstAda, ruleForBoAndCy } from '../support/build-regrade.ts';
import { givenDatabase } from '../support/database.ts';
import { startWorker, type WorkerProcess } from '../support/worker-process.ts';

const database = givenDatabase();
const running: WorkerProcess[] = [];

afterEach(async () => {
  for (const worker of running.splice(0)) await worker.stop();
  await db().$executeRaw`delete from worker_beat`;
});

async function worker(env: Record<string, string> = {}): Promise<WorkerProcess> {
  const started = startWorker(database, env);
  running.push(started);
  await started.waitFor('the worker is ready');
  return started;
}

async function untilState(regradeId: number, state: RegradeState): Promise<void> {
  for (let tries = 0; tries < 600; tries += 1) {
    if ((await loadRegrade(db(), regradeId))?.state === state) return;
    await sleep(100);
  }
  throw new Error(`The regrade did not become ${state}.`);
}

test('[F12] killed between "marks written" and "regrade committed": the old marks whole, then the new ones', async () => {
  const { puzzleId, memberId, answers } = await buildMarked();
  await ruleForBoAndCy(puzzleId, memberId);
  await ruleAgainstAda(puzzleId, memberId);
  const before = await marksOf(puzzleId);
  const first = await worker({ TAILPIECE_PAUSE_BEFORE_COMMIT_MS: '20000' });
  await askRegrade({ puzzleId, memberId, reason: 'again' });
  const regradeId = (await loadOpenRegrade(db(), puzzleId))?.id ?? 0;
  await untilState(regradeId, 'previewed');

  await agreeToRegrade({ puzzleId, memberId, regradeId, round: 1, agreed: [answers.Ada] });
  await first.waitFor('pausing before the regrade is committed');
  expect(await marksOf(puzzleId), 'a reader meanwhile').toEqual(before);
  await first.kill();
  running.splice(0);
  await sleep(200);
  expect(await marksOf(puzzleId), 'after the kill').toEqual(before);
  expect(await db().mark.count({ where: { regradeId } })).toBe(0);

  await worker();
  await untilState(regradeId, 'applied');
  expect(await marksOf(puzzleId)).toEqual({
    ...before,
    Ada: 'wrong 0',
    Bo: 'solved 5',
    Cy: 'solved 5',
  });
  expect(await db().mark.count({ where: { regradeId } }), 'written once').toBe(3);
  expect(await db().log.count({ where: { puzzleId, kind: 'regrade-applied' } })).toBe(1);
  expect(await findBrokenLog(db())).toEqual([]);
}, 150_000);
