// A puzzle closes: by the host's hand, or carried out by a job when its time has come.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { nextState } from '#lib/puzzle/next-state.ts';
import type { PuzzleState } from '#lib/puzzle/puzzle-state.ts';
import { ring } from '#lib/queue/enqueue.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { saveClosedByHand, saveClosedByTime } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { type Deed, type DeedRefusal, deedFacts } from './deed-facts.ts';

/** Closes by hand: the database's time of this moment becomes the close. */
export function closePuzzle(deed: Deed): Promise<Result<PuzzleState, DeedRefusal>> {
  const { puzzleId, memberId } = deed;
  return inTransaction(async (tx) => {
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null || puzzle.showId !== deed.showId) return refuse({ code: 'unknown-puzzle' } as const);
    const next = nextState(deedFacts(puzzle), 'close', puzzle.now);
    if (!next.ok) return next;
    await saveClosedByHand(tx, puzzleId);
    await ring(tx, 'mark-answers', { puzzleId });
    await appendLog(tx, { kind: 'puzzle-closed', puzzleId, memberId, details: { by: 'hand' } });
    return ok(next.value);
  });
}

/** Carries out a close whose time has come; false where somebody else has, or it has been moved. */
export function closeByTime(puzzleId: number): Promise<boolean> {
  return inTransaction(async (tx) => {
    if (!(await saveClosedByTime(tx, puzzleId))) return false;
    await ring(tx, 'mark-answers', { puzzleId });
    await appendLog(tx, { kind: 'puzzle-closed', puzzleId, memberId: null, details: { by: 'time' } });
    return true;
  });
}
