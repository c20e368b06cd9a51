// The one question of the heart: what is this answer worth? Rules O0 to O4, P1.

import type { SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { type AnswerToMark, createMarker, type Marker, type MarkResult } from './create-marker.ts';
import type { Scheme } from './schemes.ts';

export type { MarkResult } from './create-marker.ts';

/** Markers of the books at hand, so that a batch of answers shares its work; gone with their book. */
const markers = new WeakMap<SolutionBook, { terms: PuzzleTerms; scheme: Scheme | null; marker: Marker }>();

/**
 * The mark of an answer, or the verdicts that the book lacks (at most 40 positions; verify them, add them to the
 * book, ask again). The same text, terms, book and scheme give the same mark on every machine (rule A4). No
 * search; about 0.1 ms where the book has everything, plus the reading where `read` is not given.
 */
export function markAnswer(
  input: AnswerToMark & {
    readonly terms: PuzzleTerms;
    readonly book: SolutionBook;
    readonly scheme?: Scheme;
  },
): MarkResult {
  const { terms, book, scheme = null } = input;
  const known = markers.get(book);
  if (known !== undefined && known.terms === terms && known.scheme === scheme) return known.marker(input);
  const marker = createMarker(scheme === null ? { terms, book } : { terms, book, scheme });
  markers.set(book, { terms, scheme, marker });
  return marker(input);
}
