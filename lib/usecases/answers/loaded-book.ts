// The book of a puzzle as marking needs it, kept between batches and brought up to date at each: only
// rows that are new are read. What was worked out for equal texts is kept as long as the book stands.
// An amended puzzle has a book for each revision of its terms (rule A6).

import { createBook, type SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import type { MarkResult } from '#lib/marking/mark-answer.ts';
import type { Scheme } from '#lib/marking/schemes.ts';
import { budgetsKey, loadBookRows } from '#lib/store/books.ts';
import type { Tx } from '#lib/store/client.ts';
import { listFormerTerms } from '#lib/store/former-terms.ts';
import { loadPuzzleScheme, loadTerms, type PuzzleRecord } from '#lib/store/puzzles.ts';
import { loadReadingRulings, loadRulings } from '#lib/store/rulings.ts';

/** Everything that the marks of a batch rest on. */
export interface LoadedBook {
  /** Number of the terms. */
  readonly revision: number;
  readonly terms: PuzzleTerms;
  readonly book: SolutionBook;
  readonly scheme: Scheme;
  /** Hash of a text -> the line that the host ruled it to mean; under `TURNED_TEXTS` that boards are turned. */
  readonly meantByRuling: ReadonlyMap<string, readonly string[]>;
  readonly engineVersion: string;
  readonly bookVersion: string;
  /** Results by text and meant line, for as long as nothing above changes. */
  readonly results: Map<string, MarkResult>;
  readonly opensAt: Date | null;
  /** The books of replaced terms, by revision; empty beside a book that is one of them. */
  readonly former: ReadonlyMap<number, FormerBook>;
}

/** A book whose terms were replaced. */
export interface FormerBook {
  readonly replacedAt: Date;
  readonly book: LoadedBook;
}

interface Kept {
  readonly signature: string;
  readonly loaded: LoadedBook;
  readonly former: Map<number, FormerBook>;
  last: number;
}

const MOST_KEPT = 20;
const MOST_RESULTS = 20_000;
const kept = new Map<string, Kept>();

/**
 * Loads the book of the terms in force, those of replaced terms beside it, or of one revision alone; brings
 * up to date what is kept. Null where the puzzle was never verified or has no such revision.
 */
export async function loadBook(
  tx: Tx,
  puzzle: PuzzleRecord,
  revision = puzzle.revision,
): Promise<LoadedBook | null> {
  const { engineVersion } = puzzle;
  if (engineVersion === null) return null;
  const parts = {
    scheme: await loadPuzzleScheme(tx, puzzle),
    rulings: await loadRulings(tx, puzzle.id),
    meantByRuling: await loadReadingRulings(tx, puzzle.id),
    former: new Map<number, FormerBook>(),
  };
  const replaced = await listFormerTerms(tx, puzzle);
  if (revision !== puzzle.revision) {
    const one = replaced.find((former) => former.revision === revision);
    return one === undefined ? null : bringUpToDate(tx, puzzle, { ...parts, ...one });
  }
  const former = new Map<number, FormerBook>();
  for (const one of replaced) {
    const book = await bringUpToDate(tx, puzzle, { ...parts, ...one });
    former.set(one.revision, { replacedAt: one.replacedAt, book });
  }
  const terms = await loadTerms(tx, puzzle);
  return bringUpToDate(tx, puzzle, { ...parts, revision, terms, engineVersion, former });
}

interface Parts
  extends Pick<LoadedBook, 'revision' | 'terms' | 'scheme' | 'meantByRuling' | 'engineVersion'> {
  readonly rulings: Awaited<ReturnType<typeof loadRulings>>;
  readonly former: ReadonlyMap<number, FormerBook>;
}

async function bringUpToDate(tx: Tx, puzzle: PuzzleRecord, parts: Parts): Promise<LoadedBook> {
  const { revision, terms, scheme, rulings, meantByRuling, engineVersion } = parts;
  const { opensAt } = puzzle;
  const bookVersion = budgetsKey(terms);
  const version = { engineVersion, budgets: bookVersion };
  const signature = JSON.stringify([terms, scheme, version, rulings, [...meantByRuling], opensAt]);
  const name = `${puzzle.id} ${revision}`;
  const known = kept.get(name);
  const fresh = known !== undefined && known.signature === signature ? known : null;
  const { rows, last } = await loadBookRows(tx, puzzle.id, version, { after: fresh?.last ?? 0 });
  if (fresh !== null) {
    fresh.last = last;
    if (rows.length > 0) {
      fresh.loaded.book.add(rows);
      fresh.loaded.results.clear();
    }
    if (fresh.loaded.results.size > MOST_RESULTS) fresh.loaded.results.clear();
    replaceAll(fresh.former, parts.former);
    return fresh.loaded;
  }
  const book = createBook(rows, rulings);
  const former = new Map(parts.former);
  const stated = { revision, terms, scheme, meantByRuling, engineVersion, bookVersion, opensAt };
  const loaded: LoadedBook = { ...stated, book, results: new Map(), former };
  kept.delete(name);
  kept.set(name, { signature, loaded, former, last });
  const oldest = kept.keys().next();
  if (kept.size > MOST_KEPT && !oldest.done) kept.delete(oldest.value);
  return loaded;
}

// A kept book goes on beside the former books as they are now: one of them may have been made anew.
function replaceAll<K, V>(map: Map<K, V>, by: ReadonlyMap<K, V>): void {
  map.clear();
  for (const [key, value] of by) map.set(key, value);
}
