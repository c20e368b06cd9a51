// The host corrects a published puzzle: the new terms are kept aside and verified; nothing public changes
// until they are put in force (rules A5, A6).

import type { PuzzleTerms } from '#lib/book/terms.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { whatChanged } from '#lib/puzzle/correction.ts';
import { type PuzzleState, stateAt } from '#lib/puzzle/puzzle-state.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { appendAmendment, decideAmendment, loadOpenAmendment } from '#lib/store/amendments.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { beginProgress, endProgress } from '#lib/store/progress.ts';
import { loadPuzzle, loadTerms } from '#lib/store/puzzles.ts';
import { isUniqueViolation } from '#lib/store/unique-violation.ts';
import { type NoteReason, noteOf } from './correction-note.ts';
import { checkTerms, type DraftReason } from './create-puzzle.ts';
import { LONGEST_TITLE } from './set-puzzle.ts';

/** What the host states anew. Scheme and budgets stay those of the puzzle. */
export interface TypedAmendment {
  readonly puzzleId: number;
  readonly memberId: number;
  readonly terms: PuzzleTerms;
  readonly title: string;
  /** Empty for the generated sentence. */
  readonly howFar: string;
  readonly note: string;
}

/** States in which a puzzle can be amended. */
export const AMENDABLE: readonly PuzzleState[] = ['published', 'open', 'closed', 'revealed'];

/** Why it was not begun. */
export type AmendReason =
  | DraftReason
  | NoteReason
  | { readonly code: 'unknown-puzzle' }
  | { readonly code: 'wrong-state'; readonly state: PuzzleState; readonly expected: readonly PuzzleState[] }
  | { readonly code: 'title-too-long'; readonly most: number }
  | { readonly code: 'amendment-open' }
  | { readonly code: 'nothing-changed' };

/** Keeps the new terms and asks for their verification; gives the amendment's number. */
export async function proposeAmendment(typed: TypedAmendment): Promise<Result<number, AmendReason>> {
  const note = noteOf(typed.note, true);
  if (!note.ok) return note;
  const title = typed.title.trim();
  if (title === '') return refuse({ code: 'title-empty' });
  if (title.length > LONGEST_TITLE) return refuse({ code: 'title-too-long', most: LONGEST_TITLE });
  const checked = checkTerms(typed.terms);
  if (!checked.ok) return checked;
  const words = { title, howFar: typed.howFar.trim().slice(0, 200) || null, note: note.value };
  try {
    return await keep(typed, checked.value, words);
  } catch (error) {
    // Two at once: the other one was first.
    if (!isUniqueViolation(error)) throw error;
    return refuse({ code: 'amendment-open' });
  }
}

function keep(
  { puzzleId, memberId }: TypedAmendment,
  typed: PuzzleTerms,
  words: { readonly title: string; readonly howFar: string | null; readonly note: string },
): Promise<Result<number, AmendReason>> {
  return inTransaction(async (tx) => {
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null) return refuse({ code: 'unknown-puzzle' });
    const state = stateAt(puzzle, puzzle.now);
    if (!AMENDABLE.includes(state)) return refuse({ code: 'wrong-state', state, expected: AMENDABLE });
    if ((await loadOpenAmendment(tx, puzzleId)) !== null) return refuse({ code: 'amendment-open' });
    const { scheme, proofNodes, budgetNodes } = puzzle.terms;
    const terms = { ...typed, scheme, proofNodes, budgetNodes };
    if (whatChanged(await loadTerms(tx, puzzle), terms).length === 0)
      return refuse({ code: 'nothing-changed' });
    const amendment = await appendAmendment(tx, { puzzleId, memberId, terms, ...words });
    await beginProgress(tx, puzzleId, 'waiting');
    await enqueue(tx, 'verify-amendment', { puzzleId });
    await appendLog(tx, { kind: 'amendment-asked', puzzleId, memberId, details: { amendment } });
    return ok(amendment);
  });
}

/** Drops the amendment in the making. What was verified for it stays in the book. */
export async function cancelAmendment(deed: {
  readonly puzzleId: number;
  readonly memberId: number;
}): Promise<Result<null, { readonly code: 'no-amendment' }>> {
  return inTransaction(async (tx) => {
    const { puzzleId, memberId } = deed;
    const open = await loadOpenAmendment(tx, puzzleId);
    if (open === null || !(await decideAmendment(tx, open.id, 'cancelled')))
      return refuse({ code: 'no-amendment' });
    await endProgress(tx, puzzleId, null);
    const details = { amendment: open.id };
    await appendLog(tx, { kind: 'amendment-cancelled', puzzleId, memberId, details });
    return ok(null);
  });
}
