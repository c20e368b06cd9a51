// The book's first questions are answered, many at once, while the host watches; what is found is kept as
// it is found, so that a killed worker goes on.

import type { BookRow, Lacking } from '#lib/book/book-row.ts';
import { firstQuestions } from '#lib/book/first-questions.ts';
import { createTree } from '#lib/book/position-tree.ts';
import { readPublishedLines } from '#lib/book/published-lines.ts';
import { createBook, type SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import type { FirstLook } from '#lib/book/verify.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { type EngineProgress, isOpenVerdict } from '#lib/engine/verdict.ts';
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
  readonly firstLook?: FirstLook;
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
  const { puzzleId, terms, isWanted = async () => true } = filling;
  const version = { engineVersion: ENGINE_VERSION, budgets: budgetsKey(terms) };
  const { rows: known } = await loadBookRows(db(), puzzleId, version, { withProofs: true });
  const book = createBook(known);
  const tree = createTree(terms.fen);
  const published = readPublishedLines(terms, tree);
  follower.found(known);
  for (;;) {
    if (!(await isWanted())) return null;
    const questions = firstQuestions({ terms, book, tree, published }).map(({ moves, ...place }) =>
      moves.map((move): Lacking => ({ ...place, move })),
    );
    if (questions.length === 0) return book;
    follower.expect(questions.reduce((sum, lacking) => sum + lacking.length, 0));
    const before = book.size;
    // In the order of the questions, whichever thread was first.
    const found = await allOf(questions.map((lacking) => answer(filling, follower, { lacking, book })));
    for (const rows of found) book.add(rows);
    if (book.size === before) throw new Error('The engine gave no verdict.');
  }
}

// All are waited for, also where one fails: nothing is written behind our back.
async function allOf<T>(promises: readonly Promise<T>[]): Promise<T[]> {
  const settled = await Promise.allSettled(promises);
  return settled.map((one) => {
    if (one.status === 'rejected') throw one.reason;
    return one.value;
  });
}

/** The rows for all that is lacking in one position, in parts, each kept as soon as it cannot change any more. */
async function answer(
  { puzzleId, terms, verify }: Filling,
  follower: VerificationFollower,
  { lacking, book }: { readonly lacking: readonly Lacking[]; readonly book: SolutionBook },
): Promise<BookRow[]> {
  const keep = async (rows: readonly BookRow[], job: readonly Lacking[]): Promise<void> => {
    await inTransaction((tx) => appendBookRows(tx, puzzleId, rows, budgetsKey(terms)));
    follower.found(rows, job);
  };
  const parts = chunks(lacking);
  const isApart = parts.length > 1 && terms.task.kind !== 'mate';
  const found = await allOf(
    parts.map(async (part) => {
      const rows = await verify({
        terms,
        lacking: part,
        ...(isApart ? { firstLook: 'only' } : {}),
        onProgress: follower.progressOf(part),
      });
      await keep(isApart ? rows.filter((row) => !isOpenVerdict(row)) : rows, part);
      return rows;
    }),
  );
  const rows = found.flat();
  const open = isApart ? rows.filter(isOpenVerdict) : [];
  if (open.length === 0) return rows;
  const [{ position = '', movesLeft = null } = {}] = lacking;
  const isHeld = [...rows, ...book.rowsAt(position, movesLeft)].some(({ verdict }) => verdict === 'holds');
  // Rule V2: only where no move of the position holds is there a second look.
  const onProgress = follower.progressOf(lacking);
  const again = { terms, lacking: open.map(toLacking(lacking)), firstLook: rows, onProgress };
  const last = isHeld ? open : await verify(again);
  await keep(last, lacking);
  return [...rows.filter((row) => !isOpenVerdict(row)), ...last];
}

function toLacking(lacking: readonly Lacking[]): (row: BookRow) => Lacking {
  return (row) => {
    const one = lacking.find(({ move }) => move === row.move);
    if (one === undefined) throw new Error(`Nobody asked for ${row.move}.`);
    return one;
  };
}

// Few men: the cost is the endgame tables, which two threads would build twice.
function chunks(list: readonly Lacking[]): Lacking[][] {
  const men = (list[0]?.fen.split(' ')[0] ?? '').replace(/[^a-z]/gi, '').length;
  const size = men <= MEN_OF_TABLES ? list.length : MOVES_A_JOB;
  const parts: Lacking[][] = [];
  for (let at = 0; at < list.length; at += size) parts.push(list.slice(at, at + size));
  return parts;
}
