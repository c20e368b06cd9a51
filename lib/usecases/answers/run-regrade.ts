// The worker's part of a regrade: works out what would change and stores it for the host to look at
// (rule A7), or writes what the host said yes to. Begun again, it comes to the same end.

import { ring } from '#lib/queue/enqueue.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { countInForce } from '#lib/store/marks-in-force.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import {
  holdRegrade,
  loadRegrade,
  type RegradeRecord,
  type RegradeState,
  saveRegradeAsked,
  saveRegradePreview,
  saveRegradeProgress,
} from '#lib/store/regrades.ts';
import { addWants } from '#lib/store/wants.ts';
import { isAskingOn, workOutMarks } from './work-out-marks.ts';
import { writeRegrade } from './write-regrade.ts';

/** Goes on with a regrade where there is something to do; gives the state it is in then. */
export async function runRegrade(regradeId: number): Promise<RegradeState | null> {
  const regrade = await loadRegrade(db(), regradeId);
  if (regrade?.state === 'waiting') await preview(regrade);
  if (regrade?.state === 'applying') await writeRegrade(regradeId);
  return (await loadRegrade(db(), regradeId))?.state ?? null;
}

async function preview(regrade: RegradeRecord): Promise<void> {
  const { id, puzzleId, scope } = regrade;
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  if (puzzle === null) return;
  const total = await countInForce(db(), puzzleId, scope.answers);
  const isWanted = (done: number): Promise<boolean> =>
    saveRegradeProgress(db(), regrade, { done, total: Math.max(done, total) });
  if (!(await isWanted(0))) return;
  const worked = await workOutMarks(db(), puzzle, { answers: scope.answers, onPage: isWanted });
  if (worked === null) return;
  if (isAskingOn(worked, scope)) {
    // Asked for in nobody's name; when the book has it, this job is rung for again.
    await inTransaction(async (tx) => {
      if (await saveRegradeAsked(tx, regrade)) await addWants(tx, puzzleId, null, worked.lacking, 0);
    });
    await ring(db(), 'extend-book', { puzzleId });
    return;
  }
  await inTransaction(async (tx) => {
    const held = await holdRegrade(tx, id);
    // Something that marks rest on has changed meanwhile, or the host has thought better of it.
    if (held?.state !== 'waiting' || held.scope.round !== scope.round) return;
    await saveRegradePreview(tx, held, { stored: worked.stored, isRenewed: false });
  });
}
