// One thread of the engine pool: it waits for a job, does it, and answers. The flag that ends a job
// early lies in memory shared with the pool, because a thread that searches reads no messages.

import { flushCompileCache } from 'node:module';
import { parentPort, workerData } from 'node:worker_threads';
import { createEngine, type Engine } from '#lib/engine/create-engine.ts';
import type { EngineProgress } from '#lib/engine/verdict.ts';
import { openTables, runEngineJob } from './engine-jobs.ts';
import type { JobMessage, ThreadMessage, ThreadStart } from './inner/thread-messages.ts';

const PROGRESS_EVERY_MS = 200;

// What the pool passes is typed on its side (ThreadStart, JobMessage).
const start = workerData as ThreadStart;
const port = parentPort;
if (!port) throw new Error('engine-thread.ts runs as a worker thread only');
const stop = new Int32Array(start.stopFlag);
const tables = openTables(start.tablesDirectory);
let engine: Engine | null = null;
let isCacheKept = false;

function say(message: ThreadMessage): void {
  port?.postMessage(message);
}

function progressTo(id: number): (progress: EngineProgress) => void {
  let next = 0;
  return (progress) => {
    const now = performance.now();
    if (now < next) return;
    next = now + PROGRESS_EVERY_MS;
    say({ kind: 'progress', id, progress });
  };
}

port.on('message', async ({ id, kind, input }: JobMessage) => {
  try {
    engine ??= createEngine({ hashMiB: start.hashMiB });
    const tools = {
      engine,
      tables,
      shouldStop: () => Atomics.load(stop, 0) === id,
      onProgress: progressTo(id),
    };
    const output = await runEngineJob(kind, input, tools);
    say({ kind: 'done', id, output, wasStopped: tools.shouldStop() });
    // Not at the end: a thread is ended from outside.
    if (!isCacheKept) flushCompileCache();
    isCacheKept = true;
  } catch (fault) {
    // The job failed by our own mistake; the engine may be left in the middle of a search.
    engine = null;
    say({
      kind: 'failed',
      id,
      message: fault instanceof Error ? (fault.stack ?? fault.message) : String(fault),
    });
  }
});
