// The reveal: from now on the solution and everybody's marks are public. And the void puzzle (rule A6).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { type DeedReason, nextState } from '#lib/puzzle/next-state.ts';
import { decideAmendment, loadOpenAmendment } from '#lib/store/amendments.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendCorrection } from '#lib/store/corrections.ts';
import { appendLog } from '#lib/store/log.ts';
import { holdMarking, saveRevealed, saveVoided } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { giveBenefit, listOpenRulings, type OpenRuling } from './open-rulings.ts';

/** Why it was not revealed. */
export type RevealReason =
  | DeedReason
  | { readonly code: 'unknown-puzzle' }
  /** Moves are unclear that the host has not ruled on and not agreed to let pass (rule V8). */
  | { readonly code: 'rulings-open'; readonly open: readonly OpenRuling[]; readonly others: number };

/**
 * Shows the solution, or declares the puzzle void. Unclear moves are listed first; those that `agreed` names by
 * their keys on the list of doubtful answers count as holding, and the answers concerned are marked so
 * before anybody sees them (rule V8).
 */
export async function revealPuzzle(deed: {
  readonly puzzleId: number;
  readonly memberId: number | null;
  readonly asVoid?: boolean;
  /** The host's words for the notice of a void puzzle. */
  readonly note?: string;
  /** Open moves that the host has seen and goes on with. */
  readonly agreed?: readonly string[];
}): Promise<Result<null, RevealReason>> {
  return inTransaction(async (tx) => {
    const { puzzleId, memberId, asVoid = false, note = '', agreed = [] } = deed;
    await holdMarking(tx, puzzleId);
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null) return refuse({ code: 'unknown-puzzle' });
    const facts = { ...puzzle, failingLines: 0, overrideReason: null };
    const next = nextState(facts, asVoid ? 'void' : 'reveal', puzzle.now);
    if (!next.ok) return next;
    if (asVoid) {
      await saveVoided(tx, puzzleId);
      // There is nothing left to correct.
      const amendment = await loadOpenAmendment(tx, puzzleId);
      if (amendment !== null) await decideAmendment(tx, amendment.id, 'cancelled');
      const { revision } = puzzle;
      await appendCorrection(tx, { puzzleId, kind: 'void', note, details: {}, revision, memberId });
    } else {
      const { open, others } = await listOpenRulings(tx, puzzle);
      if (open.some(({ doubt }) => !agreed.includes(doubt)))
        return refuse({ code: 'rulings-open', open, others });
      if (open.length > 0) await giveBenefit(tx, puzzle, memberId);
      await saveRevealed(tx, puzzleId);
    }
    await appendLog(tx, { kind: asVoid ? 'puzzle-voided' : 'puzzle-revealed', puzzleId, memberId });
    return ok(null);
  }, 60_000);
}
