// A host shows the solution (rule T2 ends here), or declares a puzzle void (rule A6).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { nextState } from '#lib/puzzle/next-state.ts';
import type { PuzzleState } from '#lib/puzzle/puzzle-state.ts';
import { ring } from '#lib/queue/enqueue.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { saveRevealed, saveVoided } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { type Deed, type DeedRefusal, deedFacts } from './deed-facts.ts';

/** Shows the solution, the roll and everybody's own mark from now on. */
export function revealPuzzle(deed: Deed): Promise<Result<PuzzleState, DeedRefusal>> {
  return endPuzzle(deed, 'reveal');
}

/** Declares a puzzle void: no points, runs are not broken, the solution page says why. */
export function voidPuzzle(deed: Deed): Promise<Result<PuzzleState, DeedRefusal>> {
  return endPuzzle(deed, 'void');
}

function endPuzzle(deed: Deed, how: 'reveal' | 'void'): Promise<Result<PuzzleState, DeedRefusal>> {
  const { puzzleId, memberId } = deed;
  return inTransaction(async (tx) => {
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null || puzzle.showId !== deed.showId) return refuse({ code: 'unknown-puzzle' } as const);
    const next = nextState(deedFacts(puzzle), how, puzzle.now);
    if (!next.ok) return next;
    if (how === 'reveal') await saveRevealed(tx, puzzleId);
    else await saveVoided(tx, puzzleId);
    await ring(tx, 'mark-answers', { puzzleId });
    const kind = how === 'reveal' ? 'puzzle-revealed' : 'puzzle-voided';
    await appendLog(tx, { kind, puzzleId, memberId });
    return ok(next.value);
  });
}
