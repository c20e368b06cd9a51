// The host takes the last word on a group back: it is marked again as if nothing had been said, and
// returns to the list.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { ring } from '#lib/queue/enqueue.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { takeBackSettlement } from '#lib/store/settlements.ts';
import { gradeAgain } from './grade-again.ts';

/** Undoes what this member said under this reason; gives how many answers are marked again. */
export async function undoSettlement(said: {
  readonly puzzleId: number;
  readonly memberId: number;
  readonly why: string;
}): Promise<Result<number, { readonly code: 'nothing-to-undo' }>> {
  const { puzzleId, memberId } = said;
  const undone = await inTransaction(async (tx) => {
    const { rulings, answers } = await takeBackSettlement(tx, said);
    if (rulings.length === 0 && answers.length === 0) return refuse({ code: 'nothing-to-undo' } as const);
    const again = await gradeAgain(
      tx,
      { id: puzzleId },
      { answers: rulings.length > 0 ? 'all' : answers, reason: said.why, memberId },
    );
    const details = { rulings: [...rulings], answers: [...answers] };
    await appendLog(tx, { kind: 'settlement-undone', puzzleId, memberId, details });
    return ok(again);
  }, 60_000);
  if (undone.ok) await ring(db(), 'mark-answers', { puzzleId });
  return undone;
}
