// The worker's pulse: says that it lives, frees what dead ones held, and rings for work that no bell
// was rung for (a process died between commit and bell, or a close has come).

import { config } from '#lib/machine/config.ts';
import { log } from '#lib/machine/log.ts';
import { isKnownDead } from '#lib/machine/process-alive.ts';
import { enqueue, ring } from '#lib/queue/enqueue.ts';
import { dropBeat, freeDeadWorkers, listBeats, saveBeat } from '#lib/store/beats.ts';
import { db } from '#lib/store/client.ts';
import { listWaitingImports } from '#lib/store/imports.ts';
import { listDueToClose } from '#lib/store/puzzle-moments.ts';
import { listRegradesToRun } from '#lib/store/regrades.ts';
import { listPuzzlesWithWants } from '#lib/store/wants.ts';
import { listPuzzlesToMark } from '#lib/store/work-list.ts';

/** One beat. */
export async function beat(self: {
  readonly id: string;
  readonly pid: number;
  readonly workerIds: readonly string[];
}): Promise<void> {
  const tx = db();
  await saveBeat(tx, self);
  for (const other of await listBeats(tx)) if (isKnownDead(other.id)) await dropBeat(tx, other.id);
  const freed = await freeDeadWorkers(tx, config().beatSeconds);
  if (freed.length > 0) log().warn({ workers: freed.length }, 'took up the work of a worker that had ended');
}

/** Rings for everything that waits. */
export async function ringForWaiting(): Promise<void> {
  const tx = db();
  for (const puzzleId of await listPuzzlesToMark(tx)) await ring(tx, 'mark-answers', { puzzleId });
  for (const puzzleId of await listPuzzlesWithWants(tx)) await ring(tx, 'extend-book', { puzzleId });
  for (const regradeId of await listRegradesToRun(tx)) await ring(tx, 'regrade', { regradeId });
  for (const importId of await listWaitingImports(tx)) await ring(tx, 'import-comments', { importId });
  for (const puzzleId of await listDueToClose(tx)) await enqueue(tx, 'close-puzzle', { puzzleId });
}
