// The host changes the terms of a puzzle that is not published; it is verified again.

import type { PuzzleTerms } from '#lib/book/terms.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { beginProgress } from '#lib/store/progress.ts';
import { loadPuzzle, replaceTerms } from '#lib/store/puzzles.ts';
import { checkTerms, type DraftReason } from './create-puzzle.ts';

/** Why it cannot be changed. */
export type ChangeReason = DraftReason | { readonly code: 'unknown-puzzle' } | { readonly code: 'published' };

/** Replaces the terms and asks for verification. */
export async function changeDraft(change: {
  readonly puzzleId: number;
  readonly terms: PuzzleTerms;
  readonly memberId: number | null;
}): Promise<Result<null, ChangeReason>> {
  const terms = checkTerms(change.terms);
  if (!terms.ok) return terms;
  return inTransaction(async (tx) => {
    const { puzzleId, memberId } = change;
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null) return refuse({ code: 'unknown-puzzle' });
    if (puzzle.publishedAt !== null) return refuse({ code: 'published' });
    await replaceTerms(tx, puzzleId, terms.value);
    await beginProgress(tx, puzzleId, 'waiting');
    await enqueue(tx, 'verify-puzzle', { puzzleId });
    await appendLog(tx, { kind: 'puzzle-changed', puzzleId, memberId });
    return ok(null);
  });
}
