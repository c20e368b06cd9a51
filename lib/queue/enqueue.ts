// Puts jobs into the queue, within the caller's transaction. A key made of job and subject makes a
// second asking harmless.

import type { Tx } from '#lib/store/client.ts';
import type { JobName, Payload } from './job-names.ts';

// Work on one book is done one at a time; marking may run beside it. Of outside programs one runs at a time.
function lineOf(job: JobName, payload: object): string | null {
  if (job === 'second-opinion') return job;
  if (job === 'regrade') return keyOf(job, payload);
  const isOnBook = job === 'verify-puzzle' || job === 'verify-amendment' || job === 'extend-book';
  return isOnBook ? `book:${Object.values(payload).join()}` : null;
}

function keyOf(job: JobName, payload: object): string {
  return [job, ...Object.values(payload)].join(':');
}

/** Asks for a job; one that waits already is replaced by it. `runAt` null is now. */
export async function enqueue<N extends JobName>(
  tx: Tx,
  job: N,
  payload: Payload<N>,
  runAt: Date | null = null,
): Promise<void> {
  await tx.$queryRaw`
    select 1 as done from graphile_worker.add_job(${job}, ${JSON.stringify(payload)}::json,
      queue_name := ${lineOf(job, payload)}, run_at := ${runAt}::timestamptz, job_key := ${keyOf(job, payload)})`;
}

/**
 * Asks for a job unless one waits already that nobody has begun. For bells rung after a commit: who
 * begins later sees everything committed now, and a row lock on one job is not fought over.
 */
export async function ring<N extends JobName>(tx: Tx, job: N, payload: Payload<N>): Promise<void> {
  const waiting = await tx.$queryRaw<{ id: bigint }[]>`
    select id from graphile_worker.jobs
    where key = ${keyOf(job, payload)} and locked_at is null and attempts < max_attempts and run_at <= now() limit 1`;
  if (waiting.length === 0) await enqueue(tx, job, payload);
}
