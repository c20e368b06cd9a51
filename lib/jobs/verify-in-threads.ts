// The engine's threads as the use cases want them.

import type { EngineThreads, JobOwner } from '#lib/machine/engine-threads.ts';
import type { Verify } from '#lib/usecases/puzzles/extend-book.ts';

/** Verifies in the threads, on behalf of somebody. */
export function verifyInThreads(threads: EngineThreads, owner: JobOwner): Verify {
  return ({ terms, lacking, onProgress }) =>
    threads.run('verify', { terms, lacking }, { owner, ...(onProgress === undefined ? {} : { onProgress }) });
}
