// How far has an answer to go? The sentence under the task, on the card and in the texts. Rule O1.

import { createTree } from '#lib/book/position-tree.ts';
import { readPublishedLines } from '#lib/book/published-lines.ts';
import type { SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { createFacts } from './inner/puzzle-facts.ts';
import { SCHEMES } from './schemes.ts';

/**
 * One sentence: "The first move is enough." The number of moves in win and draw tasks comes from the book and the
 * published lines; without either it is left out. It tells no move.
 */
export function howFarSentence(terms: PuzzleTerms, book: SolutionBook, locale: Locale): string {
  const { task } = terms;
  if (task.kind === 'mate') {
    if (task.moves === 1) return say(locale, 'marking.how-far-mate-now');
    if (terms.mateWritten) return say(locale, 'marking.how-far-mate-written');
    return say(locale, task.moves === 2 ? 'marking.how-far-first-move' : 'marking.how-far-mate');
  }
  if (terms.solverMoves !== null) return say(locale, 'marking.how-far-pinned', { moves: terms.solverMoves });
  if (book.size === 0) return say(locale, `marking.how-far-${task.kind}`);
  const tree = createTree(terms.fen);
  const published = readPublishedLines(terms, tree);
  const facts = createFacts({ terms, book, tree, published, scheme: SCHEMES[terms.scheme] });
  const [main] = published.lines;
  const moves = facts.needed(null, main?.moves ?? []);
  return say(locale, `marking.how-far-${task.kind}-about`, { moves });
}
