// Answers that end the worker itself, in the real worker with the real queue (trust test F11).

import { afterEach, expect, test } from 'vitest';
import { enqueue } from '#lib/queue/enqueue.ts';
import { db } from '#lib/store/client.ts';
import { retryParked } from '#lib/usecases/answers/retry-parked.ts';
import { buildShow } from '../support/build-show.ts';
import { buildHealey, markEverything, send } from '../support/build-solution.ts';
import { givenDatabase } from '../support/database.ts';
import { accepted } from '../support/positions.ts';
import { startWorker, type WorkerProcess } from '../support/worker-process.ts';

const database = givenDatabase();
const running: WorkerProcess[] = [];

afterEach(async () => {
  for (const worker of running.splice(0)) await worker.stop();
  await db().$executeRaw`delete from worker_beat`;
});

/** Ends its process in the middle of a batch: there a text and its meant line are written as the key of their mark. */
const POISON = '1.Rh1 and a spoonful of arsenic';
const KILLER = `const { stringify } = JSON;
JSON.stringify = (value, ...more) => {
  if (Array.isArray(value) && String(value[0]).includes('arsenic')) process.kill(process.pid, 'SIGKILL');
  return stringify(value, ...more);
};`;

/** A worker that lives until it reads the poison. */
function mortal(): WorkerProcess {
  const preload = `data:text/javascript,${encodeURIComponent(KILLER)}`;
  const worker = startWorker(database, { NODE_OPTIONS: `--import=${preload}` });
  running.push(worker);
  return worker;
}

const workOf = async (id: number) => {
  const { work, tries, marks } = await db().answer.findUniqueOrThrow({
    where: { id },
    include: { marks: { where: { isCurrent: true } } },
  });
  return [work, tries, marks[0]?.outcome ?? null];
};

test('[F11] an answer that ends the worker is set aside after three lives; its neighbours are marked', async () => {
  const { memberId, ...place } = await buildShow();
  const { puzzleId, slug, terms } = await buildHealey({ place });
  const before = await send(slug, '1.Rh1 Bd7 2.Qb1');
  const poison = await send(slug, POISON);
  const after = await send(slug, '1.Qd6+');
  const lives: number[] = [];
  const isOver = async () => (await workOf(poison.answerId))[0] === 'parked';
  while (lives.length < 6 && !(await isOver())) {
    await enqueue(db(), 'mark-answers', { puzzleId });
    const worker = mortal();
    const died = new Promise<void>((resolve) => worker.child.once('exit', () => resolve()));
    const parked = (async () => {
      while (worker.child.signalCode === null && !(await isOver()))
        await new Promise((next) => setTimeout(next, 50));
    })();
    await Promise.race([died, parked]);
    lives.push((await workOf(poison.answerId))[1] as number);
  }
  expect(lives, 'tries after each life').toEqual([1, 2, 3, 3]);
  expect(await workOf(poison.answerId)).toEqual(['parked', 3, 'unclear']);
  // The last worker lives, and goes on with the neighbours by itself.
  const patience = { timeout: 30_000, interval: 100 };
  await expect.poll(() => workOf(before.answerId), patience).toEqual(['done', 0, 'solved']);
  await expect.poll(() => workOf(after.answerId), patience).toEqual(['done', 0, 'wrong']);
  for (const worker of running.splice(0)) await worker.stop();

  accepted(await retryParked({ puzzleId, memberId }));
  await markEverything(puzzleId, terms);
  expect(await workOf(poison.answerId), 'once the cause is gone').toEqual(['done', 0, 'unfinished']);
}, 120_000);
