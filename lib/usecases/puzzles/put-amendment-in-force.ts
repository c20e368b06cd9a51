// Verified new terms take the place of the old ones, in one transaction (rules A5, A6, V9): the old terms are
// kept for the answers whose writers saw them, the notice is written, everything is marked again.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { config } from '#lib/machine/config.ts';
import { whatChanged } from '#lib/puzzle/correction.ts';
import type { DeedReason } from '#lib/puzzle/next-state.ts';
import { type PuzzleState, stateAt } from '#lib/puzzle/puzzle-state.ts';
import { mayBeSeen } from '#lib/puzzle/what-may-be-seen.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { type AmendmentRecord, decideAmendment, loadOpenAmendment } from '#lib/store/amendments.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendCorrection } from '#lib/store/corrections.ts';
import { appendFormerTerms } from '#lib/store/former-terms.ts';
import { appendLog } from '#lib/store/log.ts';
import { holdMarking } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle, loadTerms, putTermsInForce } from '#lib/store/puzzles.ts';
import { gradeAgain } from '../answers/grade-again.ts';
import { countFailingLines } from './failing-lines.ts';
import { AMENDABLE } from './propose-amendment.ts';

/** Why it did not take force. */
export type InForceReason =
  | DeedReason
  | { readonly code: 'unknown-puzzle' }
  | { readonly code: 'no-amendment' };

/** Puts the amendment in force; gives the number of the revision. The reason's words go with the puzzle, the log says that there was one. */
export async function putAmendmentInForce(deed: {
  readonly puzzleId: number;
  readonly memberId: number;
  readonly overrideReason: string | null;
}): Promise<Result<number, InForceReason>> {
  const { puzzleId, memberId } = deed;
  const overrideReason = deed.overrideReason?.trim() || null;
  return inTransaction(async (tx) => {
    await holdMarking(tx, puzzleId);
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null) return refuse({ code: 'unknown-puzzle' });
    const amendment = await loadOpenAmendment(tx, puzzleId);
    if (amendment === null) return refuse({ code: 'no-amendment' });
    const state = stateAt(puzzle, puzzle.now);
    const against = reasonAgainst(amendment, state, overrideReason);
    if (against !== null) return refuse(against);
    const { terms, title, howFar, claim, report, engineVersion, note } = amendment;
    if (claim === null || engineVersion === null || puzzle.engineVersion === null)
      return refuse({ code: 'not-verified', state });

    const former = await loadTerms(tx, puzzle);
    const { revision } = puzzle;
    const next = revision + 1;
    const changed = whatChanged(former, terms);
    await appendFormerTerms(tx, puzzleId, { revision, terms: former, engineVersion: puzzle.engineVersion });
    const found = { claim, report, engineVersion, overrideReason };
    await putTermsInForce(tx, puzzleId, { ...found, terms, title, howFar, revision: next });
    await decideAmendment(tx, amendment.id, 'in-force');
    // Before the opening nobody has seen what was wrong.
    if (mayBeSeen('puzzle', 'public', state)) {
      const details = { changed };
      await appendCorrection(tx, { puzzleId, kind: 'amended', note, details, revision: next, memberId });
    }
    await gradeAgain(tx, puzzle, { answers: 'all', reason: note, memberId });
    await enqueue(tx, 'mark-answers', { puzzleId });
    if (config().uciProgram !== null) await enqueue(tx, 'second-opinion', { puzzleId });
    const overridden = overrideReason !== null;
    const details = { amendment: amendment.id, revision: next, changed: [...changed], claim, overridden };
    await appendLog(tx, { kind: 'puzzle-amended', puzzleId, memberId, details });
    return ok(next);
  }, 60_000);
}

function reasonAgainst(
  { claim, state: progress, report }: AmendmentRecord,
  state: PuzzleState,
  overrideReason: string | null,
): DeedReason | null {
  if (!AMENDABLE.includes(state)) return { code: 'wrong-state', state, expected: AMENDABLE };
  if (progress !== 'verified' || claim === null) return { code: 'not-verified', state };
  if (claim === 'false') return { code: 'claim-false', state };
  if (claim === 'unclear' && overrideReason === null) return { code: 'claim-unclear-without-reason', state };
  const lines = countFailingLines(report);
  return lines > 0 && overrideReason === null ? { code: 'published-line-fails', state, lines } : null;
}
