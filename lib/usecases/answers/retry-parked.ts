// The host has the answers that were set aside marked again, once their cause is gone.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { ring } from '#lib/queue/enqueue.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { dropParkedMarks } from '#lib/store/marks.ts';
import { putParkedBack } from '#lib/store/work-list.ts';

/** Puts all of a puzzle's parked answers back on the work list; gives how many. */
export async function retryParked(word: {
  readonly puzzleId: number;
  readonly memberId: number;
}): Promise<Result<number, { readonly code: 'group-empty' }>> {
  const { puzzleId, memberId } = word;
  const tried = await inTransaction(async (tx): Promise<Result<number, { readonly code: 'group-empty' }>> => {
    const answers = await putParkedBack(tx, puzzleId);
    if (answers.length === 0) return refuse({ code: 'group-empty' });
    await dropParkedMarks(tx, answers);
    await appendLog(tx, { kind: 'marking-retried', puzzleId, memberId, details: { answers } });
    return ok(answers.length);
  });
  if (tried.ok) await ring(db(), 'mark-answers', { puzzleId });
  return tried;
}
