// The host sets a puzzle: the draft is saved and its verification asked for.

import type { PuzzleTerms } from '#lib/book/terms.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { randomToken } from '#lib/machine/tokens.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { type FenReason, parseFen } from '#lib/rules/parse-fen.ts';
import { positionEnd } from '#lib/rules/position-end.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { inTransaction, type Tx } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { beginProgress } from '#lib/store/progress.ts';
import { createPuzzleRow } from '#lib/store/puzzles.ts';

/** What the host states. */
export interface PuzzleDraft {
  readonly showId: number;
  readonly episodeId: number;
  readonly title: string;
  readonly terms: PuzzleTerms;
  readonly opensAt: Date | null;
  readonly closesAt: Date | null;
  readonly zone: string;
  readonly memberId: number | null;
  /** The first answer of a solver counts, not the last (rule P2). */
  readonly countsFirst?: boolean;
}

/** Why it is no puzzle yet. */
export type DraftReason =
  | { readonly code: 'fen'; readonly reason: FenReason }
  | { readonly code: 'game-over'; readonly end: 'checkmate' | 'stalemate' | 'insufficient' }
  | { readonly code: 'mate-moves'; readonly least: 1; readonly most: 30 }
  | { readonly code: 'draw-needs-end' }
  | { readonly code: 'bounds'; readonly least: number; readonly most: number }
  | { readonly code: 'title-empty' }
  | { readonly code: 'close-not-after-opening' };

const FARTHEST_BOUND = 10_000;

// What holds lies above what slips (rules V2, V3).
function areBounds(holds: number, slips: number): boolean {
  const isBound = (one: number) => Number.isInteger(one) && Math.abs(one) <= FARTHEST_BOUND;
  return isBound(holds) && isBound(slips) && slips < holds;
}

/** Checks terms as far as no engine is needed; gives them with the position written in full. */
export function checkTerms(terms: PuzzleTerms): Result<PuzzleTerms, DraftReason> {
  const position = parseFen(terms.fen);
  if (!position.ok) return refuse({ code: 'fen', reason: position.reason });
  const end = positionEnd(position.value);
  if (end !== null) return refuse({ code: 'game-over', end });
  if (terms.task.kind === 'mate' && !(terms.task.moves >= 1 && terms.task.moves <= 30))
    return refuse({ code: 'mate-moves', least: 1, most: 30 });
  if (terms.task.kind === 'draw' && terms.published.length === 0 && terms.solverMoves === null)
    return refuse({ code: 'draw-needs-end' });
  if (!areBounds(terms.winBound, terms.slipBound) || !areBounds(terms.drawBound, terms.drawSlipBound))
    return refuse({ code: 'bounds', least: -FARTHEST_BOUND, most: FARTHEST_BOUND });
  return ok({
    ...terms,
    fen: writeFen(position.value),
    published: terms.published.filter((line) => line.trim() !== ''),
  });
}

/** Saves a draft and asks for its verification; gives number and public name. */
export function createPuzzle(
  draft: PuzzleDraft,
): Promise<Result<{ puzzleId: number; slug: string }, DraftReason>> {
  return saveDraft(draft, (tx, puzzleId) => enqueue(tx, 'verify-puzzle', { puzzleId }));
}

/** Saves a draft; `ask` sees to its verification, within the transaction. */
export async function saveDraft(
  draft: PuzzleDraft,
  ask: (tx: Tx, puzzleId: number) => Promise<void>,
): Promise<Result<{ puzzleId: number; slug: string }, DraftReason>> {
  const title = draft.title.trim();
  if (title === '') return refuse({ code: 'title-empty' });
  const terms = checkTerms(draft.terms);
  if (!terms.ok) return terms;
  if (draft.opensAt !== null && draft.closesAt !== null && draft.closesAt <= draft.opensAt)
    return refuse({ code: 'close-not-after-opening' });
  // Not made from title or number: nobody shall guess the address of a draft.
  const slug = randomToken().replace(/[-_]/g, 'x').slice(0, 10).toLowerCase();
  const puzzleId = await inTransaction(async (tx) => {
    const id = await createPuzzleRow(tx, { ...draft, title, slug, terms: terms.value });
    await beginProgress(tx, id, 'waiting');
    await ask(tx, id);
    await appendLog(tx, { kind: 'puzzle-created', puzzleId: id, memberId: draft.memberId });
    return id;
  });
  return ok({ puzzleId, slug });
}
