// The close: by hand, or carried out when its time has come. Open and closed follow from the times;
// carrying out only notes it and rings for what is still unmarked.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { type DeedReason, nextState } from '#lib/puzzle/next-state.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { saveClosedByHand, saveClosedByTime, saveCloseMoved } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { gradeAgain } from '../answers/grade-again.ts';

/** Why it was not closed. */
export type CloseReason = DeedReason | { readonly code: 'unknown-puzzle' };

/** Closes now. */
export async function closePuzzle(deed: {
  readonly puzzleId: number;
  readonly memberId: number | null;
}): Promise<Result<null, CloseReason>> {
  return inTransaction(async (tx) => {
    const { puzzleId, memberId } = deed;
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null) return refuse({ code: 'unknown-puzzle' });
    const next = nextState({ ...puzzle, failingLines: 0, overrideReason: null }, 'close', puzzle.now);
    if (!next.ok) return next;
    await saveClosedByHand(tx, puzzleId);
    await enqueue(tx, 'mark-answers', { puzzleId });
    await appendLog(tx, { kind: 'puzzle-closed', puzzleId, memberId, details: { by: 'hand' } });
    return ok(null);
  });
}

/** Carries out a close whose time has come; false where there was none to carry out. Twice is harmless. */
export async function closeByTime(puzzleId: number): Promise<boolean> {
  return inTransaction(async (tx) => {
    if (!(await saveClosedByTime(tx, puzzleId))) return false;
    await enqueue(tx, 'mark-answers', { puzzleId });
    await appendLog(tx, { kind: 'puzzle-closed', puzzleId, memberId: null, details: { by: 'time' } });
    return true;
  });
}

/** Moves the close. Which answers are in time is decided anew for all of them; one entry tells it. */
export async function moveClose(deed: {
  readonly puzzleId: number;
  readonly memberId: number | null;
  readonly closesAt: Date;
}): Promise<Result<null, CloseReason>> {
  return inTransaction(async (tx) => {
    const { puzzleId, memberId, closesAt } = deed;
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null) return refuse({ code: 'unknown-puzzle' });
    const { opensAt } = puzzle;
    if (opensAt !== null && closesAt <= opensAt)
      return refuse({ code: 'close-not-after-opening', state: 'published' });
    if (puzzle.revealedAt !== null)
      return refuse({ code: 'wrong-state', state: 'revealed', expected: ['published', 'open', 'closed'] });
    await saveCloseMoved(tx, puzzleId, closesAt);
    await gradeAgain(tx, puzzle, { answers: 'all', reason: '', memberId });
    await enqueue(tx, 'mark-answers', { puzzleId });
    await enqueue(tx, 'close-puzzle', { puzzleId }, closesAt);
    const details = { from: puzzle.closesAt?.toISOString() ?? '', to: closesAt.toISOString() };
    await appendLog(tx, { kind: 'close-moved', puzzleId, memberId, details });
    return ok(null);
  });
}
