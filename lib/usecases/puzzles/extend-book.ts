// Positions that nobody foresaw are verified on demand and join the book; the answers that waited for
// them go back on the work list.

import type { BookRow, Lacking } from '#lib/book/book-row.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import type { EngineProgress } from '#lib/engine/verdict.ts';
import { ring } from '#lib/queue/enqueue.ts';
import { appendBookRows, budgetsKey } from '#lib/store/books.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { loadTermsOf } from '#lib/store/former-terms.ts';
import { appendLog } from '#lib/store/log.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { loadOpenRegrade } from '#lib/store/regrades.ts';
import { nextWants, strikeWants } from '#lib/store/wants.ts';

/** Verifies what is lacking: the engine's threads in the worker. */
export type Verify = (question: {
  readonly terms: PuzzleTerms;
  readonly lacking: readonly Lacking[];
  readonly onProgress?: (progress: EngineProgress) => void;
}) => Promise<BookRow[]>;

/** Verifies everything that is wanted, one position at a time. Gives how many verdicts were new. */
export async function extendBook(input: {
  readonly puzzleId: number;
  readonly verify: Verify;
}): Promise<number> {
  const { puzzleId, verify } = input;
  let added = 0;
  for (;;) {
    const lacking = await nextWants(db(), puzzleId);
    const puzzle = await loadPuzzle(db(), { id: puzzleId });
    if (lacking === null || puzzle === null) break;
    // At each position anew: an amendment may have taken force meanwhile (rule A6).
    const terms = await loadTermsOf(db(), puzzle, lacking[0]?.revision ?? puzzle.revision);
    const rows = await verify({ terms, lacking });
    const freed = await inTransaction(async (tx) => {
      const count = await appendBookRows(tx, puzzleId, rows, budgetsKey(terms));
      added += count;
      const answers = await strikeWants(tx, puzzleId, lacking);
      const failed = rows.filter((row) => row.check === 'failed').length;
      if (failed > 0) await appendLog(tx, { kind: 'check-failed', puzzleId, details: { rows: failed } });
      if (count > 0) await appendLog(tx, { kind: 'book-extended', puzzleId, details: { rows: count } });
      return answers;
    });
    if (freed > 0) await ring(db(), 'mark-answers', { puzzleId });
  }
  // A regrade waits for verdicts in nobody's name; it has no place on the work list.
  const open = await loadOpenRegrade(db(), puzzleId);
  if (open?.state === 'waiting') await ring(db(), 'regrade', { regradeId: open.id });
  return added;
}
