// The move that the hint below the answer field shows. It must not hint: one is taken that nobody can play here.

import { legalMoves } from '#lib/rules/legal-moves.ts';
import { type Kind, type Position, parseSquare } from '#lib/rules/position.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { lettersOf } from './piece-letters.ts';

const EXAMPLES: readonly {
  readonly kind: Kind;
  readonly name: 'knight' | 'bishop' | 'rook';
  readonly square: string;
}[] = [
  { kind: 'n', name: 'knight', square: 'f3' },
  { kind: 'n', name: 'knight', square: 'c6' },
  { kind: 'b', name: 'bishop', square: 'b5' },
  { kind: 'b', name: 'bishop', square: 'g4' },
  { kind: 'r', name: 'rook', square: 'd7' },
  { kind: 'r', name: 'rook', square: 'e1' },
];

/** An example in the viewer's letters, in another language's, and in words: "Nf3, Sf3, knight to f3". */
export function exampleMove(
  position: Position,
  locale: Locale,
): { short: string; other: string; spoken: string } {
  const legal = legalMoves(position);
  const isPlayable = (kind: Kind, square: string): boolean =>
    legal.some((move) => move.kind === kind && move.to === parseSquare(square));
  const example = EXAMPLES.find(({ kind, square }) => !isPlayable(kind, square)) ?? EXAMPLES[0];
  if (example === undefined) throw new Error('there are examples');
  const { kind, name, square } = example;
  const letter = (of: Locale): string => lettersOf(of).charAt('kqrbn'.indexOf(kind));
  return {
    short: letter(locale) + square,
    other: letter(locale === 'en' ? 'de' : 'en') + square,
    spoken: say(locale, 'moves.goes-to', { man: say(locale, `moves.${name}`), square }),
  };
}
