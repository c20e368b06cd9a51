// When castling is allowed, where its men go, and when the right is lost.

import { isAttackedOn } from './attacks.ts';
import type { Move } from './move.ts';
import type { CastlingRights, Position, Square } from './position.ts';

/** One of the four castlings: its right as a bit, and the squares concerned. */
export interface Castling {
  readonly right: CastlingRights;
  readonly letter: 'K' | 'Q' | 'k' | 'q';
  readonly way: 'short' | 'long';
  readonly kingFrom: Square;
  readonly kingTo: Square;
  readonly rookFrom: Square;
  readonly rookTo: Square;
  /** Must be empty. */
  readonly between: readonly Square[];
}

/** The four castlings in FEN order. */
export const CASTLINGS: readonly Castling[] = [
  castling(1, 'K', 0),
  castling(2, 'Q', 0),
  castling(4, 'k', 56),
  castling(8, 'q', 56),
];

function castling(right: CastlingRights, letter: Castling['letter'], home: Square): Castling {
  const isShort = letter === 'K' || letter === 'k';
  return {
    right,
    letter,
    way: isShort ? 'short' : 'long',
    kingFrom: home + 4,
    kingTo: home + (isShort ? 6 : 2),
    rookFrom: home + (isShort ? 7 : 0),
    rookTo: home + (isShort ? 5 : 3),
    between: isShort ? [home + 5, home + 6] : [home + 1, home + 2, home + 3],
  };
}

/** Rights that are lost when a move leaves or reaches the square. */
const LOST_AT: Uint8Array = Uint8Array.from({ length: 64 }, (_, square) =>
  CASTLINGS.reduce(
    (lost, { right, kingFrom, rookFrom }) =>
      square === kingFrom || square === rookFrom ? lost | right : lost,
    0,
  ),
);

/** The rights that remain after a move between two squares. */
export function rightsAfter(rights: CastlingRights, from: Square, to: Square): CastlingRights {
  return rights & ~((LOST_AT[from] ?? 0) | (LOST_AT[to] ?? 0));
}

/**
 * Adds the legal castlings of the side to move. The king may not stand in, pass or reach an attacked
 * square; the rook may (Laws 3.8.2). Call it only when the king is not in check.
 */
export function addCastlings(position: Position, moves: Move[]): void {
  const { board, turn, castling: rights } = position;
  const enemy = turn === 'w' ? 8 : 0;
  for (const { right, way, kingFrom, kingTo, rookTo, between } of CASTLINGS) {
    if ((rights & right) === 0 || right < 4 !== (turn === 'w')) continue;
    if (between.some((square) => board[square] !== 0)) continue;
    if (isAttackedOn(board, rookTo, enemy, -1) || isAttackedOn(board, kingTo, enemy, -1)) continue;
    moves.push({
      from: kingFrom,
      to: kingTo,
      kind: 'k',
      captured: null,
      promotion: null,
      castle: way,
      isEnPassant: false,
    });
  }
}
