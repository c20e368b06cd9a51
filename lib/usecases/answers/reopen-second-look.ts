// The host takes the word on a second look back: the look waits again, and the mark that the word had
// changed is once more what it was before (rule A3: as a new row, nothing is undone in the past).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { findAnswer } from '#lib/store/answers.ts';
import { inTransaction, type Tx } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { loadCurrentMark, loadFormerMark, loadProgramMark, restoreMark } from '#lib/store/marks.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { loadLook, saveLookReopened } from '#lib/store/second-looks.ts';
import { lockSolver } from '#lib/store/solvers.ts';
import { renewStandings } from './renew-standings.ts';

/** Reopens a look that this member has settled. */
export async function reopenSecondLook(said: {
  readonly puzzleId: number;
  readonly answerId: number;
  readonly memberId: number;
}): Promise<Result<null, { readonly code: 'nothing-to-undo' }>> {
  const { puzzleId, answerId, memberId } = said;
  return inTransaction(async (tx) => {
    const answer = await findAnswer(tx, answerId);
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (answer === null || puzzle === null || answer.puzzleId !== puzzleId)
      return refuse({ code: 'nothing-to-undo' } as const);
    await lockSolver(tx, answer.solverId);
    const look = await loadLook(tx, answerId);
    const isWithdrawn = (await findAnswer(tx, answerId))?.withdrawnAt !== null;
    if (look?.settledAt == null || look.memberId !== memberId || isWithdrawn)
      return refuse({ code: 'nothing-to-undo' } as const);
    const mark = look.result === 'changed' ? await takeMarkBack(tx, answerId, memberId) : null;
    if (mark !== null) await renewStandings(tx, puzzle, [answer.solverId]);
    await saveLookReopened(tx, answerId);
    const details = { look: look.id, mark };
    await appendLog(tx, { kind: 'look-reopened', puzzleId, answerId, memberId, details });
    return ok(null);
  });
}

// Only where the member's own overrule is still in force; a later word stays.
async function takeMarkBack(tx: Tx, answerId: number, memberId: number): Promise<number | null> {
  const current = await loadCurrentMark(tx, answerId);
  if (current?.overrule?.memberId !== memberId) return null;
  const former = await loadFormerMark(tx, current.id);
  // The program may have marked again meanwhile, beside the overrule.
  const before = former?.overrule === null ? await loadProgramMark(tx, answerId) : former;
  return before === null ? null : restoreMark(tx, before);
}
