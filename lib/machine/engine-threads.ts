// The pool of engine threads. Each thread has an engine of its own, with a table of fixed size, so
// that a verdict is the same whichever thread finds it (rule V0), and lives in a process of its own, so
// that whatever ends it, memory included, costs the job it happened in and no other.

import { DEFAULT_HASH_MIB } from '#lib/engine/create-engine.ts';
import type { EngineProgress } from '#lib/engine/verdict.ts';
import type { EngineJobKind, EngineJobs } from './engine-jobs.ts';
import { type EngineMember, startEngineMember } from './inner/engine-member.ts';
import { createJobQueue, type JobOwner } from './inner/job-queue.ts';
import type { JobMessage, ProcessStart, ThreadMessage } from './inner/thread-messages.ts';

export type { JobOwner } from './inner/job-queue.ts';

/** Why a job has no result: the caller no longer wanted it, its thread died, our own mistake, or the pool was closed. */
export type JobFailure = 'cancelled' | 'crashed' | 'failed' | 'closed';

/** What a job's promise is rejected with. */
export class EngineJobError extends Error {
  readonly reason: JobFailure;
  constructor(reason: JobFailure, detail: string) {
    super(`Engine job ${reason}: ${detail}`);
    this.name = 'EngineJobError';
    this.reason = reason;
  }
}

/** How a job is asked for. */
export interface JobOptions {
  readonly owner: JobOwner;
  readonly signal?: AbortSignal;
  /** A few times a second. */
  readonly onProgress?: (progress: EngineProgress) => void;
}

export interface EngineThreads {
  readonly threads: number;
  run<K extends EngineJobKind>(
    kind: K,
    input: EngineJobs[K]['input'],
    options: JobOptions,
  ): Promise<EngineJobs[K]['output']>;
  /** Jobs that wait, and jobs under way. */
  load(): { readonly waiting: number; readonly running: number };
  /** Ends every thread; jobs that are not done are rejected. */
  close(): Promise<void>;
}

/** What the threads of a pool are made with. */
export interface ThreadSettings {
  readonly threads: number;
  /** Size of the prover's table; part of what makes verdicts repeatable. */
  readonly hashMiB?: number;
  /** What a thread may hold beside its engine, endgame tables aside. A job that needs more crashes alone. */
  readonly heapMiB?: number;
  /** What its process may hold in all; default 1,400 MiB and the prover's table. */
  readonly memoryMiB?: number;
  /** How long a cancelled job may take to end by itself, in milliseconds; then its process is killed. */
  readonly graceMs?: number;
  /** Where endgame tables are kept; null: in memory only. */
  readonly tablesDirectory?: string | null;
  /** The module that the threads run; another one only in tests of what a thread may do. */
  readonly threadFile?: URL;
}

const HEAP_MIB = 512;
// Beside the prover's table: a full heap, and all endgame tables of four men at once (500 MiB), with room to build one.
const MEMORY_MIB = 1400;
const GRACE_MS = 3000;

type Output = EngineJobs[EngineJobKind]['output'];

interface Job {
  readonly message: JobMessage;
  readonly options: JobOptions;
  readonly resolve: (output: Output) => void;
  readonly reject: (fault: EngineJobError) => void;
  readonly onAbort: () => void;
}

interface Thread {
  readonly member: EngineMember;
  job: Job | null;
}

/** A pool. Its threads start with their first jobs. */
export function startEngineThreads(settings: ThreadSettings): EngineThreads {
  return new Pool(settings);
}

class Pool implements EngineThreads {
  readonly threads: number;
  readonly #settings: ThreadSettings;
  readonly #queue = createJobQueue<Job>();
  readonly #pool = new Set<Thread>();
  #lastId = 0;
  #isClosed = false;

  constructor(settings: ThreadSettings) {
    this.threads = settings.threads;
    this.#settings = settings;
  }

  run<K extends EngineJobKind>(
    kind: K,
    input: EngineJobs[K]['input'],
    options: JobOptions,
  ): Promise<EngineJobs[K]['output']> {
    this.#lastId += 1;
    // Kind, input and output belong together by the table of kinds; a message forgets which.
    const message = { id: this.#lastId, kind, input } as JobMessage;
    return new Promise<Output>((resolve, reject) => {
      const job: Job = { message, options, resolve, reject, onAbort: () => this.#abort(job) };
      if (this.#isClosed) return reject(new EngineJobError('closed', kind));
      if (options.signal?.aborted) return reject(new EngineJobError('cancelled', kind));
      options.signal?.addEventListener('abort', job.onAbort, { once: true });
      this.#queue.add(job, options.owner);
      this.#giveWork();
    }) as Promise<EngineJobs[K]['output']>;
  }

  load(): { readonly waiting: number; readonly running: number } {
    const running = [...this.#pool].filter(({ job }) => job !== null).length;
    return { waiting: this.#queue.length, running };
  }

  async close(): Promise<void> {
    this.#isClosed = true;
    for (const job of this.#queue.drain()) fail(job, 'closed', job.message.kind);
    const ended = [...this.#pool].map(async (thread) => {
      this.#lose(thread, 'the pool was closed');
      await thread.member.kill();
    });
    await Promise.all(ended);
  }

  #startThread(): Thread {
    const thread: Thread = {
      member: startEngineMember(
        (message) => this.#hear(thread, message),
        (detail) => this.#lose(thread, detail),
      ),
      job: null,
    };
    thread.member.send(startOf(this.#settings));
    this.#pool.add(thread);
    return thread;
  }

  #hear(thread: Thread, message: ThreadMessage): void {
    const { job } = thread;
    if (!job || job.message.id !== message.id) return;
    if (message.kind === 'progress') {
      job.options.onProgress?.(message.progress);
      return;
    }
    thread.job = null;
    if (message.kind === 'failed') fail(job, 'failed', message.message);
    else if (message.wasStopped) fail(job, 'cancelled', job.message.kind);
    else {
      job.options.signal?.removeEventListener('abort', job.onAbort);
      job.resolve(message.output);
    }
    this.#giveWork();
  }

  // The thread is gone. Its job is lost and not tried again: what killed one thread may kill the next.
  #lose(thread: Thread, detail: string): void {
    if (!this.#pool.delete(thread)) return;
    const { job } = thread;
    if (job)
      fail(job, this.#isClosed ? 'closed' : job.options.signal?.aborted ? 'cancelled' : 'crashed', detail);
    thread.job = null;
    void thread.member.kill();
    this.#giveWork();
  }

  #giveWork(): void {
    while (this.#queue.length > 0 && !this.#isClosed) {
      const idle = [...this.#pool].find(({ job }) => job === null);
      if (!idle && this.#pool.size >= this.threads) break;
      const job = this.#queue.next();
      if (!job) break;
      const thread = idle ?? this.#startThread();
      thread.job = job;
      thread.member.keepAlive(true);
      thread.member.send({ kind: 'job', job: job.message });
    }
    // A thread without work does not keep us alive.
    for (const { job, member } of this.#pool) if (job === null) member.keepAlive(false);
  }

  #abort(job: Job): void {
    if (this.#queue.remove(job)) {
      fail(job, 'cancelled', job.message.kind);
      return;
    }
    const thread = [...this.#pool].find((one) => one.job === job);
    if (!thread) return;
    thread.member.send({ kind: 'stop', id: job.message.id });
    // Whoever listens ends within milliseconds; what does not listen is ended.
    setTimeout(() => {
      if (thread.job === job) this.#lose(thread, 'it did not stop');
    }, this.#settings.graceMs ?? GRACE_MS).unref();
  }
}

function startOf(settings: ThreadSettings): ProcessStart {
  const {
    hashMiB = DEFAULT_HASH_MIB,
    heapMiB = HEAP_MIB,
    memoryMiB = MEMORY_MIB + hashMiB,
    tablesDirectory = null,
    threadFile = new URL('./engine-thread.ts', import.meta.url),
  } = settings;
  return { kind: 'start', hashMiB, heapMiB, memoryMiB, tablesDirectory, threadFile: threadFile.href };
}

function fail({ options, reject, onAbort }: Job, reason: JobFailure, detail: string): void {
  options.signal?.removeEventListener('abort', onAbort);
  reject(new EngineJobError(reason, detail));
}
