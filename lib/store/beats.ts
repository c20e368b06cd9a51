// Signs of life of worker processes. What a dead one had locked in the queue is freed.

import type { Tx } from './client.ts';

/** Seconds without a sign after which a worker counts as dead: three missed beats. */
export function deadAfterSeconds(beatSeconds: number): number {
  return 3 * beatSeconds;
}

/** Longest time until a dead worker's work is taken up: dead, then seen at the next beat of another. */
export function takenUpWithinSeconds(beatSeconds: number): number {
  return deadAfterSeconds(beatSeconds) + beatSeconds + 5;
}

/** Says that this process lives, and which workers of the queue are its. */
export async function saveBeat(
  tx: Tx,
  beat: { readonly id: string; readonly pid: number; readonly workerIds: readonly string[] },
): Promise<void> {
  const workerIds = [...beat.workerIds];
  await tx.$executeRaw`
    insert into worker_beat (id, pid, worker_ids, started_at, beat_at)
    values (${beat.id}, ${beat.pid}, ${workerIds}, clock_timestamp(), clock_timestamp())
    on conflict (id) do update set worker_ids = excluded.worker_ids, beat_at = clock_timestamp()`;
}

/** Takes a process off the list: it ended in order, or is known to be dead. */
export async function dropBeat(tx: Tx, id: string): Promise<void> {
  await tx.workerBeat.deleteMany({ where: { id } });
}

/** Processes on the list. */
export async function listBeats(tx: Tx): Promise<{ id: string; pid: number; beatAt: Date }[]> {
  return tx.workerBeat.findMany({ select: { id: true, pid: true, beatAt: true } });
}

/**
 * Frees what is locked by workers that no living process owns. A lock younger than five seconds is
 * left: its owner may not have beaten yet. Gives the names of the freed.
 */
export async function freeDeadWorkers(tx: Tx, beatSeconds: number): Promise<string[]> {
  await tx.$executeRaw`
    delete from worker_beat where beat_at < clock_timestamp() - make_interval(secs => ${deadAfterSeconds(beatSeconds)})`;
  const dead = await tx.$queryRaw<{ locked_by: string }[]>`
    select distinct locked_by from graphile_worker.jobs
    where locked_by is not null and locked_at < clock_timestamp() - interval '5 seconds'
      and locked_by not in (select unnest(worker_ids) from worker_beat)`;
  const ids = dead.map((row) => row.locked_by);
  if (ids.length > 0)
    await tx.$queryRaw`select 1 as done from graphile_worker.force_unlock_workers(${ids}::text[])`;
  return ids;
}
