// The host publishes: from the opening on the puzzle is public. A false claim cannot be (rule A5).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { type DeedReason, nextState } from '#lib/puzzle/next-state.ts';
import type { PuzzleState } from '#lib/puzzle/puzzle-state.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { holdMarking, savePublished } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle, savePuzzleWords } from '#lib/store/puzzles.ts';
import { countFailingLines } from './failing-lines.ts';

/** Why it was not published. */
export type PublishReason = DeedReason | { readonly code: 'unknown-puzzle' };

/**
 * Publishes, with the times where they are given now. Claim and published lines (rule V9) are those of the last
 * verification; `overrideReason` goes into the log as a fact, its words into the puzzle.
 */
export async function publishPuzzle(deed: {
  readonly puzzleId: number;
  readonly memberId: number | null;
  readonly overrideReason: string | null;
  readonly opensAt?: Date;
  readonly closesAt?: Date;
}): Promise<Result<PuzzleState, PublishReason>> {
  return inTransaction(async (tx) => {
    const { puzzleId, memberId, overrideReason } = deed;
    // Two at once wait for each other: the second sees what the first has done.
    await holdMarking(tx, puzzleId);
    const stored = await loadPuzzle(tx, { id: puzzleId });
    if (stored === null) return refuse({ code: 'unknown-puzzle' });
    const puzzle = {
      ...stored,
      opensAt: deed.opensAt ?? stored.opensAt,
      closesAt: deed.closesAt ?? stored.closesAt,
    };
    const facts = { ...puzzle, failingLines: countFailingLines(puzzle.report), overrideReason };
    const next = nextState(facts, 'publish', puzzle.now);
    if (!next.ok) return next;
    await savePuzzleWords(tx, puzzleId, { opensAt: puzzle.opensAt, closesAt: puzzle.closesAt });
    await savePublished(tx, puzzleId, overrideReason);
    await enqueue(tx, 'close-puzzle', { puzzleId }, puzzle.closesAt);
    const details = { claim: puzzle.claim ?? '', overridden: overrideReason !== null };
    await appendLog(tx, { kind: 'puzzle-published', puzzleId, memberId, details });
    return ok(next.value);
  });
}
