// The worker process: marks answers, verifies puzzles, extends books, takes in comments, closes by time.

import { EventEmitter } from 'node:events';
import { join } from 'node:path';
import { run, type WorkerEvents } from 'graphile-worker';
import { config } from '#lib/machine/config.ts';
import { startEngineThreads } from '#lib/machine/engine-threads.ts';
import { followParent, sayReady } from '#lib/machine/follow-parent.ts';
import { log } from '#lib/machine/log.ts';
import { processName } from '#lib/machine/process-alive.ts';
import { endForsakenPrograms } from '#lib/machine/uci-program.ts';
import { quietQueueLogger } from '#lib/queue/install-queue.ts';
import { dropBeat } from '#lib/store/beats.ts';
import { closeDatabase, databaseAddress, db } from '#lib/store/client.ts';
import { beat, ringForWaiting } from './keep-alive.ts';
import { createTasks } from './tasks.ts';

const CONCURRENCY = 4;
const id = processName();
const workerIds = new Set<string>();
const threads = startEngineThreads({
  threads: config().engineThreads,
  tablesDirectory: join(config().dataDir, 'tables'),
});

// A worker that was killed could not end the outside program that it was asking.
const forsaken = endForsakenPrograms();
if (forsaken > 0) log().warn({ processes: forsaken }, 'ended what a killed worker had left running');

const events: WorkerEvents = new EventEmitter();
// Jobs are locked in the name of the pool, not of its single workers.
events.on('pool:create', ({ workerPool }) => workerIds.add(workerPool.id));

const runner = await run({
  events,
  connectionString: databaseAddress(),
  concurrency: CONCURRENCY,
  maxPoolSize: CONCURRENCY + 2,
  pollInterval: 2000,
  noHandleSignals: true,
  taskList: createTasks(threads),
  // Without a line of its own the library says that a file is missing.
  parsedCronItems: [],
  logger: quietQueueLogger((line) => log().warn(line)),
});

let isEnding = false;
async function pulse(): Promise<void> {
  while (!isEnding) {
    try {
      await beat({ id, pid: process.pid, workerIds: [...workerIds] });
      await ringForWaiting();
    } catch (error) {
      log().warn({ problem: String(error) }, 'a beat was missed');
    }
    await new Promise((resolve) => setTimeout(resolve, config().beatSeconds * 1000));
  }
}
void pulse();
sayReady();
log().info({ id }, 'the worker is ready');

followParent(async () => {
  isEnding = true;
  await Promise.all([runner.stop(), threads.close()]);
  await dropBeat(db(), id);
  await closeDatabase();
});
