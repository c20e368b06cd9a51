// The book of a puzzle as marking needs it, kept between batches and brought up to date at each: only
// rows that are new are read. What was worked out for equal texts is kept as long as the book stands.

import { createBook, type SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import type { MarkResult } from '#lib/marking/mark-answer.ts';
import type { Scheme } from '#lib/marking/schemes.ts';
import { budgetsKey, loadBookRows } from '#lib/store/books.ts';
import type { Tx } from '#lib/store/client.ts';
import { loadPuzzleScheme, loadTerms, type PuzzleRecord } from '#lib/store/puzzles.ts';
import { loadReadingRulings, loadRulings } from '#lib/store/rulings.ts';

/** Everything that the marks of a batch rest on. */
export interface LoadedBook {
  readonly terms: PuzzleTerms;
  readonly book: SolutionBook;
  readonly scheme: Scheme;
  /** Hash of a text -> the line that the host ruled it to mean. */
  readonly meantByRuling: ReadonlyMap<string, readonly string[]>;
  readonly engineVersion: string;
  readonly bookVersion: string;
  /** Results by text and meant line, for as long as nothing above changes. */
  readonly results: Map<string, MarkResult>;
}

interface Kept {
  readonly signature: string;
  readonly loaded: LoadedBook;
  last: number;
}

const MOST_KEPT = 20;
const MOST_RESULTS = 20_000;
const kept = new Map<number, Kept>();

/** Loads the book or brings it up to date; null where the puzzle was never verified. */
export async function loadBook(tx: Tx, puzzle: PuzzleRecord): Promise<LoadedBook | null> {
  const { engineVersion } = puzzle;
  if (engineVersion === null) return null;
  const terms = await loadTerms(tx, puzzle);
  const scheme = await loadPuzzleScheme(tx, puzzle);
  const rulings = await loadRulings(tx, puzzle.id);
  const meantByRuling = await loadReadingRulings(tx, puzzle.id);
  const bookVersion = budgetsKey(terms);
  const version = { engineVersion, budgets: bookVersion };
  const signature = JSON.stringify([terms, scheme, version, rulings, [...meantByRuling]]);
  const former = kept.get(puzzle.id);
  const isFresh = former !== undefined && former.signature === signature;
  const { rows, last } = await loadBookRows(tx, puzzle.id, version, {
    after: isFresh ? former.last : 0,
  });
  if (isFresh) {
    former.last = last;
    if (rows.length > 0) {
      former.loaded.book.add(rows);
      former.loaded.results.clear();
    }
    if (former.loaded.results.size > MOST_RESULTS) former.loaded.results.clear();
    return former.loaded;
  }
  const book = createBook(rows, rulings);
  const loaded = { terms, book, scheme, meantByRuling, engineVersion, bookVersion, results: new Map() };
  kept.delete(puzzle.id);
  kept.set(puzzle.id, { signature, loaded, last });
  const oldest = kept.keys().next();
  if (kept.size > MOST_KEPT && !oldest.done) kept.delete(oldest.value);
  return loaded;
}
