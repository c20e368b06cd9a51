// How is a move said aloud? "bishop takes f7, check": the man, what it does, where; its own square only
// where another man of the kind could go there too.

import { isCheck } from '#lib/rules/attacks.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Move } from '#lib/rules/move.ts';
import { playMove } from '#lib/rules/play-move.ts';
import { type Kind, type Position, squareName } from '#lib/rules/position.ts';
import { positionEnd } from '#lib/rules/position-end.ts';
import { say } from './format.ts';
import type { Locale } from './locale.ts';

const NAMES = {
  p: 'pawn',
  n: 'knight',
  b: 'bishop',
  r: 'rook',
  q: 'queen',
  k: 'king',
} as const satisfies Record<Kind, string>;

/**
 * The legal `move` of `position` in spoken words, without a capital at its beginning in English and
 * without a full stop: "rook from a1 d1", "castles short, check", "pawn takes e8, promoting to a queen".
 */
export function spokenMove(position: Position, move: Move, locale: Locale): string {
  const after = playMove(position, move);
  const plain = withPromotion(whereTo(position, move, locale), move, locale);
  if (positionEnd(after) === 'checkmate') return say(locale, 'moves.with-mate', { move: plain });
  return isCheck(after) ? say(locale, 'moves.with-check', { move: plain }) : plain;
}

function whereTo(position: Position, move: Move, locale: Locale): string {
  if (move.castle !== null) return say(locale, `moves.castles-${move.castle}`);
  const man = manOf(position, move, locale);
  const square = squareName(move.to);
  if (move.isEnPassant) return say(locale, 'moves.takes-en-passant', { man, square });
  return say(locale, move.captured === null ? 'moves.goes-to' : 'moves.takes', { man, square });
}

function manOf(position: Position, move: Move, locale: Locale): string {
  const man = say(locale, `moves.${NAMES[move.kind]}`);
  const hasRival = legalMoves(position).some(
    (other) => other.kind === move.kind && other.to === move.to && other.from !== move.from,
  );
  return hasRival ? say(locale, 'moves.from-square', { man, square: squareName(move.from) }) : man;
}

function withPromotion(spoken: string, { promotion }: Move, locale: Locale): string {
  if (promotion === null) return spoken;
  return say(locale, 'moves.promotes', { move: spoken, man: NAMES[promotion] });
}
