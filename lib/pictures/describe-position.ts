// The text alternative of a diagram: which men stand where, as problem columns list them.

import { kindOf, type Position, type Side, sideOf, squareName } from '#lib/rules/position.ts';
import type { MessageKey } from '#lib/words/catalogue/catalogue.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';

const ORDER = ['k', 'q', 'r', 'b', 'n', 'p'] as const;
const KEYS: Readonly<Record<(typeof ORDER)[number], MessageKey>> = {
  k: 'board.men-king',
  q: 'board.men-queen',
  r: 'board.men-rook',
  b: 'board.men-bishop',
  n: 'board.men-knight',
  p: 'board.men-pawn',
};

/** "White: king h2, queen g6, rooks d1 and f3. Black: king c5. White to move." */
export function describePosition(position: Position, locale: Locale): string {
  const turn = say(locale, position.turn === 'w' ? 'board.white-to-move' : 'board.black-to-move');
  return [
    `${say(locale, 'board.white')}: ${listMen(position, 'w', locale)}.`,
    `${say(locale, 'board.black')}: ${listMen(position, 'b', locale)}.`,
    turn,
  ].join(' ');
}

function listMen(position: Position, side: Side, locale: Locale): string {
  const groups = ORDER.flatMap((kind) => {
    const squares = [...position.board].flatMap((man, square) =>
      sideOf(man) === side && kindOf(man) === kind ? [squareName(square)] : [],
    );
    if (squares.length === 0) return [];
    return [`${say(locale, KEYS[kind], { count: squares.length })} ${squares.join(', ')}`];
  });
  return groups.join('; ');
}
