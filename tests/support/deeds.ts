// What deeds leave behind: entries of the log and jobs in the queue.

import { db } from '#lib/store/client.ts';

/** Kinds and details of the log's entries about a puzzle, oldest first. */
export async function loggedOf(puzzleId: number): Promise<[string, unknown][]> {
  const rows = await db().log.findMany({ where: { puzzleId }, orderBy: { id: 'asc' } });
  return rows.map((row) => [row.kind, row.details]);
}

/** Names of the jobs about a puzzle that wait, with the moment each is for, by name. */
export async function jobsOf(puzzleId: number): Promise<Map<string, Date>> {
  const rows = await db().$queryRaw<{ key: string; runAt: Date }[]>`
    select key, run_at as "runAt" from graphile_worker.jobs
    where key like ${`%:${puzzleId}`} order by key`;
  return new Map(rows.map((row) => [row.key.split(':')[0] ?? '', row.runAt]));
}
