// How is a book filled before publication? Question by question, until `firstQuestions` has none left.

import type { BookRow } from './book-row.ts';
import { firstQuestions } from './first-questions.ts';
import { createTree } from './position-tree.ts';
import { readPublishedLines } from './published-lines.ts';
import type { Question } from './question.ts';
import { createBook, type SolutionBook } from './solution-book.ts';
import type { PuzzleTerms } from './terms.ts';
import type { Judge } from './verify.ts';

/** How far building has come. */
export interface BuildProgress {
  /** Questions answered, and those known to be open. */
  readonly done: number;
  readonly open: number;
  readonly question: Question;
}

/** What building needs. */
export interface BuildOptions {
  readonly terms: PuzzleTerms;
  readonly judge: Judge;
  /** A book begun earlier, which is added to. */
  readonly book?: SolutionBook;
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (progress: BuildProgress) => void;
}

/**
 * The book of a puzzle as it has to be before publication. Costs up to `proofNodes` or four times `budgetNodes` a
 * move. Stopped in between, the book so far: building goes on from there.
 */
export function buildBook(options: BuildOptions): SolutionBook {
  const { terms, judge, book = createBook([]), shouldStop, onProgress } = options;
  const tree = createTree(terms.fen);
  const published = readPublishedLines(terms, tree);
  let done = 0;
  for (;;) {
    const questions = firstQuestions({ terms, book, tree, published });
    const before = book.size;
    for (const [at, question] of questions.entries()) {
      if (shouldStop?.() === true) return book;
      onProgress?.({ done, open: questions.length - at, question });
      book.add(judge(question));
      done += 1;
    }
    // A judge that was stopped gives nothing: asking again would not end.
    if (questions.length === 0 || book.size === before) return book;
  }
}

/** Rows whose check failed: an alarm for the host (rule T1). */
export function failedRows(rows: readonly BookRow[]): readonly BookRow[] {
  return rows.filter(({ check }) => check === 'failed');
}
