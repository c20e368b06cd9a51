// The book's first questions are answered, many at once, while the host watches; what is found is kept as
// it is found, so that a killed worker goes on.

import type { BookRow, Lacking } from '#lib/book/book-row.ts';
import { firstQuestions } from '#lib/book/first-questions.ts';
import { createTree } from '#lib/book/position-tree.ts';
import { readPublishedLines } from '#lib/book/published-lines.ts';
import { createBook, type SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import type { EngineProgress } from '#lib/engine/verdict.ts';
import { appendBookRows, budgetsKey, loadBookRows } from '#lib/store/books.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { followVerification, type VerificationFollower } from './verification-progress.ts';

/** Moves of one position that are asked for together: few enough to spread over the threads. */
const MOVES_A_JOB = 4;
const MEN_OF_TABLES = 5;

/** Verifies what is lacking: the engine's threads in the worker. */
export type Verify = (question: {
  readonly terms: PuzzleTerms;
  readonly lacking: readonly Lacking[];
  readonly onProgress?: (progress: EngineProgress) => void;
}) => Promise<BookRow[]>;

/** What is filled, and how. */
export interface Filling {
  readonly puzzleId: number;
  readonly terms: PuzzleTerms;
  readonly verify: Verify;
  /** Asked before each round: false where nobody waits for the book any more. */
  readonly isWanted?: () => Promise<boolean>;
}

/** Fills the book of a puzzle under these terms; null where nobody wants it any more. */
export async function fillBook(filling: Filling): Promise<SolutionBook | null> {
  const follower = followVerification(filling.puzzleId);
  try {
    return await askAll(filling, follower);
  } finally {
    await follower.end();
  }
}

async function askAll(filling: Filling, follower: VerificationFollower): Promise<SolutionBook | null> {
  const { puzzleId, terms, verify, isWanted = async () => true } = filling;
  const version = { engineVersion: ENGINE_VERSION, budgets: budgetsKey(terms) };
  const { rows: known } = await loadBookRows(db(), puzzleId, version, { withProofs: true });
  const book = createBook(known);
  const tree = createTree(terms.fen);
  const published = readPublishedLines(terms, tree);
  follower.found(known);
  for (;;) {
    if (!(await isWanted())) return null;
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
