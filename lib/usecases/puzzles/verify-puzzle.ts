// Is the claim true, and what else is? The worker answers the book's first questions, many at once,
// while the host watches; what is found is kept as it is found, so that a killed worker goes on.

import type { BookRow, Lacking } from '#lib/book/book-row.ts';
import { movesLeftAtStart } from '#lib/book/claim.ts';
import { firstQuestions } from '#lib/book/first-questions.ts';
import { createTree } from '#lib/book/position-tree.ts';
import { readPublishedLines } from '#lib/book/published-lines.ts';
import { createBook, type SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { config } from '#lib/machine/config.ts';
import { log } from '#lib/machine/log.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { appendBookRows, budgetsKey, loadBookRows } from '#lib/store/books.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { toJson } from '#lib/store/json.ts';
import { appendLog } from '#lib/store/log.ts';
import { beginProgress, endProgress } from '#lib/store/progress.ts';
import { saveVerified } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle, loadTerms } from '#lib/store/puzzles.ts';
import type { Verify } from './extend-book.ts';
import { reportOf } from './soundness.ts';
import { followVerification, type VerificationFollower } from './verification-progress.ts';

/** Moves of one position that are asked for together: few enough to spread over the threads. */
const MOVES_A_JOB = 4;
const MEN_OF_TABLES = 5;

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
  const follower = followVerification(puzzleId);
  try {
    const book = await fillBook({ puzzleId, terms, verify, follower });
    await follower.end();
    await keep(puzzleId, terms, book);
  } catch (error) {
    await follower.end();
    // Removed meanwhile: there is nobody left to tell.
    if ((await loadPuzzle(db(), { id: puzzleId })) === null) return;
    const why = error instanceof Error ? error.message : String(error);
    await endProgress(db(), puzzleId, why.slice(0, 500));
    log().error({ puzzleId, problem: why }, 'a verification failed');
    throw error;
  }
}

interface Filling {
  readonly puzzleId: number;
  readonly terms: PuzzleTerms;
  readonly verify: Verify;
  readonly follower: VerificationFollower;
}

async function fillBook({ puzzleId, terms, verify, follower }: Filling): Promise<SolutionBook> {
  const version = { engineVersion: ENGINE_VERSION, budgets: budgetsKey(terms) };
  const { rows: known } = await loadBookRows(db(), puzzleId, version, { withProofs: true });
  const book = createBook(known);
  const tree = createTree(terms.fen);
  const published = readPublishedLines(terms, tree);
  follower.found(known);
  for (;;) {
    const questions = firstQuestions({ terms, book, tree, published });
    const jobs = questions.flatMap(({ fen, position, movesLeft, moves }) =>
      chunks(moves.map((move): Lacking => ({ fen, position, movesLeft, move }))),
    );
    if (jobs.length === 0) return book;
    follower.expect(jobs.reduce((sum, job) => sum + job.length, 0));
    const before = book.size;
    // All are waited for, also where one fails: nothing is written behind our back.
    const found = await Promise.allSettled(
      jobs.map(async (lacking) => {
        const rows = await verify({ terms, lacking, onProgress: follower.progressOf(lacking) });
        await inTransaction((tx) => appendBookRows(tx, puzzleId, rows, version.budgets));
        follower.found(rows, lacking);
        return rows;
      }),
    );
    // In the order of the questions, whichever thread was first.
    for (const one of found) {
      if (one.status === 'rejected') throw one.reason;
      book.add(one.value);
    }
    if (book.size === before) throw new Error('The engine gave no verdict.');
  }
}

// Few men: the cost is the endgame tables, which two threads would build twice.
function chunks(list: readonly Lacking[]): Lacking[][] {
  const men = (list[0]?.fen.split(' ')[0] ?? '').replace(/[^a-z]/gi, '').length;
  const size = men <= MEN_OF_TABLES ? list.length : MOVES_A_JOB;
  const parts: Lacking[][] = [];
  for (let at = 0; at < list.length; at += size) parts.push(list.slice(at, at + size));
  return parts;
}

/** True where a first move holds; unclear where none is known to and one is open; else false (rule A5). */
function claimOf(first: readonly BookRow[]): 'true' | 'false' | 'unclear' {
  if (first.some((row) => row.verdict === 'holds')) return 'true';
  return first.some((row) => row.verdict === 'unclear') ? 'unclear' : 'false';
}

async function keep(puzzleId: number, terms: PuzzleTerms, book: SolutionBook): Promise<void> {
  const first = book.rowsAt(createTree(terms.fen).root.bookPosition, movesLeftAtStart(terms));
  const claim = claimOf(first);
  const report = toJson(reportOf(terms, book));
  const rows = book.rows();
  const failed = rows.filter((row) => row.check === 'failed').length;
  await inTransaction(async (tx) => {
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
        keys: first.filter((row) => row.verdict === 'holds').length,
        verdicts: rows.length,
        nodes: rows.reduce((sum, row) => sum + row.nodes, 0),
        engine: ENGINE_VERSION,
      },
    });
  });
}
