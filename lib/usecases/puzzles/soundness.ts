// The soundness report as it is stored: what the book says of the claim, and the published lines
// marked like a viewer's (rule V9).

import { movesLeftAtStart } from '#lib/book/claim.ts';
import { createTree } from '#lib/book/position-tree.ts';
import type { SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { type SoundnessReport, writeSoundnessReport } from '#lib/book/write-soundness-report.ts';
import type { Outcome } from '#lib/marking/mark.ts';
import { markAnswer } from '#lib/marking/mark-answer.ts';

/** A published line with its own mark. */
export interface MarkedLine {
  readonly text: string;
  readonly outcome: Outcome;
  readonly p: number;
  readonly r: number;
  readonly atMove: number | null;
}

/** What is stored. */
export interface StoredReport {
  readonly v: 1;
  readonly soundness: SoundnessReport;
  readonly publishedLines: readonly MarkedLine[];
}

/** The report of a verified puzzle. */
export function reportOf(terms: PuzzleTerms, book: SolutionBook): StoredReport {
  const publishedLines = terms.published.map((text): MarkedLine => {
    const result = markAnswer({ terms, book, text, mayAsk: 0 });
    if (result.kind !== 'mark') throw new Error('A line that may ask for nothing was not marked.');
    const { outcome, p, r, atMove } = result.mark;
    return { text, outcome, p, r, atMove };
  });
  return { v: 1, soundness: writeSoundnessReport(terms, book), publishedLines };
}

/** The claim: true where a first move holds; unclear where none is known to and one is open; else false (rule A5). */
export function claimOf(
  terms: PuzzleTerms,
  book: SolutionBook,
): { readonly claim: 'true' | 'false' | 'unclear'; readonly keys: number } {
  const first = book.rowsAt(createTree(terms.fen).root.bookPosition, movesLeftAtStart(terms));
  const keys = first.filter((row) => row.verdict === 'holds').length;
  if (keys > 0) return { claim: 'true', keys };
  return { claim: first.some((row) => row.verdict === 'unclear') ? 'unclear' : 'false', keys };
}
