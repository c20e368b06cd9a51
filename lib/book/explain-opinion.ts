// What does another program think of the diagram? Its word stands beside the book's and changes nothing in it.

import type { Uci } from '#lib/rules/move.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { movesText } from '#lib/words/move-text.ts';
import { pawns } from './inner/pawns.ts';

/** Why a program's answer could not be used. */
export type OpinionFault =
  | 'cannot-start'
  | 'no-answer'
  | 'ended'
  | 'too-much-output'
  | 'illegal-move'
  | 'illegal-line'
  /** It was not asked: it had failed too often. */
  | 'set-aside';

/** An opinion as it is kept, from the side to move: the move it would play, or why there is none. */
export type Opinion =
  | {
      readonly v: 1;
      readonly kind: 'move';
      /** The program's own name for itself; "" where it told none. */
      readonly name: string;
      readonly move: Uci;
      readonly depth: number | null;
      readonly centipawns: number | null;
      /** Moves to mate, negative where the side to move is mated; null where it claims none. */
      readonly mateIn: number | null;
    }
  | { readonly v: 1; readonly kind: 'none'; readonly fault: OpinionFault };

/** The stored data as an opinion; it was written by this program, so its version alone is looked at. */
export function parseOpinion(stored: unknown): Opinion | null {
  if (typeof stored !== 'object' || stored === null || Reflect.get(stored, 'v') !== 1) return null;
  return stored as Opinion;
}

/** The opinion in two sentences: what the program says, and that our verdicts do not hang on it. */
export function explainOpinion(opinion: Opinion, fen: string, locale: Locale): string[] {
  return [whatItSays(opinion, fen, locale), say(locale, 'book.opinion-beside')];
}

function whatItSays(opinion: Opinion, fen: string, locale: Locale): string {
  if (opinion.kind === 'none') return say(locale, `book.opinion-${opinion.fault}`);
  const { name, mateIn, centipawns } = opinion;
  const who =
    name === '' ? say(locale, 'book.opinion-nameless') : say(locale, 'book.opinion-named', { name });
  const told = { who, move: movesText(fen, [opinion.move], { letters: locale }), depth: opinion.depth ?? -1 };
  if (mateIn !== null) {
    return say(locale, mateIn > 0 ? 'book.opinion-mate' : 'book.opinion-mated', {
      ...told,
      moves: Math.abs(mateIn),
    });
  }
  if (centipawns === null) return say(locale, 'book.opinion-move', told);
  return say(locale, 'book.opinion-value', { ...told, value: pawns(locale, centipawns) });
}
