// The host changes a puzzle that is not published. Other terms are verified again; other words and times need not be.

import { isDeepStrictEqual } from 'node:util';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { beginProgress } from '#lib/store/progress.ts';
import { holdMarking } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle, loadTerms, replaceTerms, savePuzzleWords } from '#lib/store/puzzles.ts';
import { checkTerms, type DraftReason } from './create-puzzle.ts';

/** Why it cannot be changed. */
export type ChangeReason = DraftReason | { readonly code: 'unknown-puzzle' } | { readonly code: 'published' };

/** What else can be changed of a draft. */
export interface DraftWords {
  readonly title: string;
  readonly episodeId: number;
  /** Null for the generated sentence. */
  readonly howFar: string | null;
  readonly opensAt: Date;
  readonly closesAt: Date;
  readonly zone: string;
  readonly countsFirst: boolean;
}

/** Replaces terms and words, and asks for verification where the terms are others. */
export async function changeDraft(change: {
  readonly puzzleId: number;
  readonly terms: PuzzleTerms;
  readonly memberId: number | null;
  /** Left as they are where not given. */
  readonly words?: DraftWords;
}): Promise<Result<null, ChangeReason>> {
  const terms = checkTerms(change.terms);
  if (!terms.ok) return terms;
  return inTransaction(async (tx) => {
    const { puzzleId, memberId, words } = change;
    // Two at once wait for each other: the second sees what the first has done.
    await holdMarking(tx, puzzleId);
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null) return refuse({ code: 'unknown-puzzle' });
    if (puzzle.publishedAt !== null) return refuse({ code: 'published' });
    if (words !== undefined) await savePuzzleWords(tx, puzzleId, words);
    if (!isDeepStrictEqual(await loadTerms(tx, puzzle), terms.value)) {
      await replaceTerms(tx, puzzle, terms.value);
      await beginProgress(tx, puzzleId, 'waiting');
      await enqueue(tx, 'verify-puzzle', { puzzleId });
    }
    await appendLog(tx, { kind: 'puzzle-changed', puzzleId, memberId });
    return ok(null);
  });
}
