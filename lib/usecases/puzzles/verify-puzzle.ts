// Is the claim true, and what else is? The worker fills the book while the host watches, and the report is kept.

import type { SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { config } from '#lib/machine/config.ts';
import { log } from '#lib/machine/log.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { toJson } from '#lib/store/json.ts';
import { appendLog } from '#lib/store/log.ts';
import { beginProgress, endProgress } from '#lib/store/progress.ts';
import { holdMarking, saveVerified } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle, loadTerms } from '#lib/store/puzzles.ts';
import type { Verify } from './fill-book.ts';
import { fillBook } from './fill-book.ts';
import { claimOf, reportOf } from './soundness.ts';

/** Verifies a puzzle. Begun again, it goes on from the rows that are there. */
export async function verifyPuzzle(input: {
  readonly puzzleId: number;
  readonly verify: Verify;
}): Promise<void> {
  const { puzzleId, verify } = input;
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  if (puzzle === null) return;
  const terms = await loadTerms(db(), puzzle);
  await beginProgress(db(), puzzleId, 'running');
  try {
    const book = await fillBook({ puzzleId, terms, verify });
    if (book !== null) await keep(puzzleId, terms, book);
  } catch (error) {
    // Removed meanwhile: there is nobody left to tell.
    if ((await loadPuzzle(db(), { id: puzzleId })) === null) return;
    const why = error instanceof Error ? error.message : String(error);
    await endProgress(db(), puzzleId, why.slice(0, 500));
    log().error({ puzzleId, problem: why }, 'a verification failed');
    throw error;
  }
}

async function keep(puzzleId: number, terms: PuzzleTerms, book: SolutionBook): Promise<void> {
  const { claim, keys } = claimOf(terms, book);
  const report = toJson(reportOf(terms, book));
  const rows = book.rows();
  const failed = rows.filter((row) => row.check === 'failed').length;
  await inTransaction(async (tx) => {
    // A change of the draft that is not committed yet is waited for.
    await holdMarking(tx, puzzleId);
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null) return;
    // Changed meanwhile: another verification has been asked for.
    if (JSON.stringify(await loadTerms(tx, puzzle)) !== JSON.stringify(terms)) return;
    await saveVerified(tx, puzzleId, { claim, report, engineVersion: ENGINE_VERSION });
    await endProgress(tx, puzzleId, null);
    // A job of its own: it neither delays nor spoils what was found here.
    if (config().uciProgram !== null) await enqueue(tx, 'second-opinion', { puzzleId });
    if (failed > 0) await appendLog(tx, { kind: 'check-failed', puzzleId, details: { rows: failed } });
    await appendLog(tx, {
      kind: 'puzzle-verified',
      puzzleId,
      details: {
        claim,
        keys,
        verdicts: rows.length,
        nodes: rows.reduce((sum, row) => sum + row.nodes, 0),
        engine: ENGINE_VERSION,
      },
    });
  });
}
