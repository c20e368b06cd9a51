// The reveal: from now on the solution and everybody's marks are public. And the void puzzle (rule A6).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { type DeedReason, nextState } from '#lib/puzzle/next-state.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendCorrection } from '#lib/store/corrections.ts';
import { appendLog } from '#lib/store/log.ts';
import { saveRevealed, saveVoided } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';

/** Why it was not revealed. */
export type RevealReason = DeedReason | { readonly code: 'unknown-puzzle' };

/** Shows the solution, or declares the puzzle void. */
export async function revealPuzzle(deed: {
  readonly puzzleId: number;
  readonly memberId: number | null;
  readonly asVoid?: boolean;
  /** The host's words for the notice of a void puzzle. */
  readonly note?: string;
}): Promise<Result<null, RevealReason>> {
  return inTransaction(async (tx) => {
    const { puzzleId, memberId, asVoid = false, note = '' } = deed;
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null) return refuse({ code: 'unknown-puzzle' });
    const facts = { ...puzzle, failingLines: 0, overrideReason: null };
    const next = nextState(facts, asVoid ? 'void' : 'reveal', puzzle.now);
    if (!next.ok) return next;
    if (asVoid) {
      await saveVoided(tx, puzzleId);
      const { revision } = puzzle;
      await appendCorrection(tx, { puzzleId, kind: 'void', note, details: {}, revision, memberId });
    } else await saveRevealed(tx, puzzleId);
    await appendLog(tx, { kind: asVoid ? 'puzzle-voided' : 'puzzle-revealed', puzzleId, memberId });
    return ok(null);
  });
}
