// What the pool, its processes and their threads say to each other.

import type { EngineProgress } from '#lib/engine/verdict.ts';
import type { EngineJobKind, EngineJobs } from '../engine-jobs.ts';

/** Passed to a thread when it starts. */
export interface ThreadStart {
  readonly hashMiB: number;
  readonly tablesDirectory: string | null;
  /** One Int32: the id of the job that is to end early, or 0. */
  readonly stopFlag: SharedArrayBuffer;
}

/** The first message to a process. */
export interface ProcessStart {
  readonly kind: 'start';
  readonly hashMiB: number;
  readonly tablesDirectory: string | null;
  readonly heapMiB: number;
  readonly memoryMiB: number;
  /** Address of the module that the thread runs. */
  readonly threadFile: string;
}

/** A job for a thread. Ids begin at 1. */
export type JobMessage = {
  [K in EngineJobKind]: { readonly id: number; readonly kind: K; readonly input: EngineJobs[K]['input'] };
}[EngineJobKind];

/** What a process is told. */
export type ProcessOrder =
  | ProcessStart
  | { readonly kind: 'job'; readonly job: JobMessage }
  | { readonly kind: 'stop'; readonly id: number };

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

/** What a process says: its thread's words, or why it is about to end. */
export type ProcessMessage = ThreadMessage | { readonly kind: 'lost'; readonly detail: string };
