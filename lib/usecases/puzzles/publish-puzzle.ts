// A host publishes a verified puzzle (rules A5, V9).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { nextState } from '#lib/puzzle/next-state.ts';
import type { PuzzleState } from '#lib/puzzle/puzzle-state.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { savePublished } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { type Deed, type DeedRefusal, deedFacts } from './deed-facts.ts';

/**
 * Publishes, and asks for the close to be carried out when its time comes. The reason is needed for an
 * unclear claim and for a published line that fails; it is kept with the puzzle, and the log says that
 * there was one.
 */
export function publishPuzzle(
  deed: Deed & { readonly overrideReason: string | null },
): Promise<Result<PuzzleState, DeedRefusal>> {
  const { puzzleId, memberId } = deed;
  return inTransaction(async (tx) => {
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null || puzzle.showId !== deed.showId) return refuse({ code: 'unknown-puzzle' } as const);
    const given = deed.overrideReason?.trim() || null;
    const facts = deedFacts(puzzle, given);
    const next = nextState(facts, 'publish', puzzle.now);
    if (!next.ok) return next;
    const isNeeded = facts.claim === 'unclear' || facts.failingLines > 0;
    await savePublished(tx, puzzleId, isNeeded ? given : null);
    if (puzzle.closesAt !== null) await enqueue(tx, 'close-puzzle', { puzzleId }, puzzle.closesAt);
    const details = { claim: facts.claim ?? '', overridden: isNeeded };
    await appendLog(tx, { kind: 'puzzle-published', puzzleId, memberId, details });
    return ok(next.value);
  });
}
