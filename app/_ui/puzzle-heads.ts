import type { PublicPuzzle } from '#lib/puzzle/public-puzzle.ts';
import { say } from '#lib/words/format.ts';
import { LOCALES, type Locale } from '#lib/words/locale.ts';

/** "White to play and mate in three": the task as a headline. */
export function taskHeadline(puzzle: Pick<PublicPuzzle, 'turn' | 'task'>, locale: Locale): string {
  const side = puzzle.turn === 'w' ? 'white' : 'black';
  switch (puzzle.task.kind) {
    case 'mate':
      return say(locale, 'pages.task-mate', { side, moves: puzzle.task.moves });
    case 'win':
      return say(locale, 'pages.task-win', { side });
    case 'draw':
      return say(locale, 'pages.task-draw', { side });
  }
}

/**
 * The title that a host gave; empty where it is only the task, in whatever language the desk wrote it: a reader of
 * another language would else read the task twice.
 */
export function ownTitle(puzzle: Pick<PublicPuzzle, 'turn' | 'task' | 'title'>): string {
  return LOCALES.some((locale) => taskHeadline(puzzle, locale) === puzzle.title) ? '' : puzzle.title;
}

/** "No. 42", or nothing where the show does not count its episodes. */
export function episodeLabel(puzzle: Pick<PublicPuzzle, 'episodeNumber'>, locale: Locale): string {
  return puzzle.episodeNumber === null ? '' : say(locale, 'pages.number', { number: puzzle.episodeNumber });
}
