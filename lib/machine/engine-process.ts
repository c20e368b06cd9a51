// One member of the engine pool: a process with one engine thread. The process is there for what a thread
// alone cannot survive (memory that is asked for at once ends the whole process, not the thread), and its
// own first thread stays free to pass on a stop, to watch the memory, and to end when the pool is gone.

import { Worker } from 'node:worker_threads';
import type { ProcessMessage, ProcessOrder, ProcessStart, ThreadStart } from './inner/thread-messages.ts';

const LOOK_EVERY_MS = 100;

const stopFlag = new SharedArrayBuffer(4);
let thread: Worker | null = null;

function say(message: ProcessMessage): void {
  process.send?.(message);
}

/** Tells the pool why, and ends. */
function giveUp(detail: string): void {
  process.send?.({ kind: 'lost', detail } satisfies ProcessMessage, () => process.exit(1));
}

function start({ threadFile, heapMiB, memoryMiB, hashMiB, tablesDirectory }: ProcessStart): Worker {
  const workerData: ThreadStart = { hashMiB, tablesDirectory, stopFlag };
  const worker = new Worker(new URL(threadFile), {
    workerData,
    resourceLimits: { maxOldGenerationSizeMb: heapMiB },
  });
  worker.on('message', say);
  worker.on('error', (fault) => giveUp(fault instanceof Error ? fault.message : String(fault)));
  worker.on('exit', (code) => giveUp(`the thread ended with code ${code}`));
  setInterval(() => {
    if (process.memoryUsage.rss() > memoryMiB * 1_048_576) giveUp(`more than ${memoryMiB} MiB of memory`);
  }, LOOK_EVERY_MS);
  return worker;
}

// What the pool sends is typed on its side (ProcessOrder).
process.on('message', (order: ProcessOrder) => {
  if (order.kind === 'start') thread ??= start(order);
  else if (order.kind === 'job') thread?.postMessage(order.job);
  else Atomics.store(new Int32Array(stopFlag), 0, order.id);
});
process.on('disconnect', () => process.exit(0));
// A key press in the terminal reaches every process; when to end is for the pool to say.
process.on('SIGINT', () => {});
process.on('SIGTERM', () => {});
