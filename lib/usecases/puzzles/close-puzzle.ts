// The close: by hand, or carried out when its time has come. Open and closed follow from the times;
// carrying out only notes it and rings for what is still unmarked.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { type DeedReason, nextState } from '#lib/puzzle/next-state.ts';
import { stateAt } from '#lib/puzzle/puzzle-state.ts';
import { mayBeSeen } from '#lib/puzzle/what-may-be-seen.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendCorrection } from '#lib/store/corrections.ts';
import { appendLog } from '#lib/store/log.ts';
import {
  holdMarking,
  holdSenders,
  saveClosedByHand,
  saveClosedByTime,
  saveCloseMoved,
} from '#lib/store/puzzle-moments.ts';
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
    await holdSenders(tx, puzzleId);
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

/**
 * Moves the close. Which answers are in time is decided anew for all of them; one entry tells it, and where
 * the public knew the former close, a notice (rule A6). Nobody who was told "in time" becomes late by it.
 */
export async function moveClose(deed: {
  readonly puzzleId: number;
  readonly memberId: number | null;
  readonly closesAt: Date;
  /** The host's words for the notice. */
  readonly note?: string;
}): Promise<Result<null, CloseReason | { readonly code: 'close-unchanged' }>> {
  return inTransaction(async (tx) => {
    const { puzzleId, memberId, closesAt, note = '' } = deed;
    // Marks that are just being written were decided by the former close.
    await holdMarking(tx, puzzleId);
    await holdSenders(tx, puzzleId);
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null) return refuse({ code: 'unknown-puzzle' });
    const state = stateAt(puzzle, puzzle.now);
    if (state === 'revealed' || state === 'void')
      return refuse({ code: 'wrong-state', state, expected: ['published', 'open', 'closed'] });
    const { opensAt } = puzzle;
    if (opensAt !== null && closesAt <= opensAt) return refuse({ code: 'close-not-after-opening', state });
    if (closesAt.getTime() === puzzle.closesAt?.getTime()) return refuse({ code: 'close-unchanged' });
    const isEarlier = puzzle.closesAt !== null && closesAt < puzzle.closesAt;
    if (isEarlier && closesAt < puzzle.now) return refuse({ code: 'close-is-past', state });
    if (mayBeSeen('puzzle', 'public', state) && puzzle.closesAt !== null)
      await appendCorrection(tx, {
        puzzleId,
        kind: 'extended',
        note,
        details: { from: puzzle.closesAt.toISOString(), to: closesAt.toISOString() },
        revision: puzzle.revision,
        memberId,
      });
    await saveCloseMoved(tx, puzzleId, closesAt);
    await gradeAgain(tx, puzzle, { answers: 'all', reason: note, memberId });
    await enqueue(tx, 'mark-answers', { puzzleId });
    await enqueue(tx, 'close-puzzle', { puzzleId }, closesAt);
    const details = { from: puzzle.closesAt?.toISOString() ?? '', to: closesAt.toISOString() };
    await appendLog(tx, { kind: 'close-moved', puzzleId, memberId, details });
    return ok(null);
  });
}
