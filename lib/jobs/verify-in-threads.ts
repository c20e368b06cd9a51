// The engine's threads as the use cases want them.

import { EngineJobError, type EngineThreads, type JobOwner } from '#lib/machine/engine-threads.ts';
import type { Verify } from '#lib/usecases/puzzles/fill-book.ts';

/** Verifies in the threads, on behalf of somebody. */
export function verifyInThreads(threads: EngineThreads, owner: JobOwner): Verify {
  return ({ onProgress, ...question }) =>
    threads.run('verify', question, { owner, ...(onProgress === undefined ? {} : { onProgress }) });
}

/** Has the pool been closed, or the job called back? Then nothing is wrong with what was to be verified. */
export function isEndOfThreads(fault: unknown): boolean {
  return fault instanceof EngineJobError && (fault.reason === 'closed' || fault.reason === 'cancelled');
}
