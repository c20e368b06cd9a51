// What the pool and its threads say to each other.

import type { EngineProgress } from '#lib/engine/verdict.ts';
import type { EngineJobKind, EngineJobs } from '../engine-jobs.ts';

/** Passed to a thread when it starts. */
export interface ThreadStart {
  readonly hashMiB: number;
  readonly tablesDirectory: string | null;
  /** One Int32: the id of the job that is to end early, or 0. */
  readonly stopFlag: SharedArrayBuffer;
}

/** A job for a thread. Ids begin at 1. */
export type JobMessage = {
  [K in EngineJobKind]: { readonly id: number; readonly kind: K; readonly input: EngineJobs[K]['input'] };
}[EngineJobKind];

/** What a thread says of its job. */
export type ThreadMessage =
  | { readonly kind: 'progress'; readonly id: number; readonly progress: EngineProgress }
  | {
      readonly kind: 'done';
      readonly id: number;
      readonly output: EngineJobs[EngineJobKind]['output'];
      readonly wasStopped: boolean;
    }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string };
