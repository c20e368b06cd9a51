// What the position is after a move.

import { CASTLINGS, rightsAfter } from './castling.ts';
import { passedPawnSquare } from './en-passant.ts';
import type { Move } from './move.ts';
import { manOf, otherSide, type Position } from './position.ts';

/**
 * A new position, the old one untouched. The move must be legal there (from `legalMoves`, `findUci` or
 * `parseSan`). After every double step the square passed over is kept, as FEN states it.
 */
export function playMove(position: Position, move: Move): Position {
  const { from, to } = move;
  const board = position.board.slice();
  board[to] = move.promotion === null ? (board[from] ?? 0) : manOf(position.turn, move.promotion);
  board[from] = 0;
  if (move.isEnPassant) board[passedPawnSquare(position)] = 0;
  if (move.castle !== null) {
    const castling = CASTLINGS.find(({ kingTo }) => kingTo === to);
    if (castling === undefined) throw new Error(`No castling to square ${to}`);
    board[castling.rookTo] = board[castling.rookFrom] ?? 0;
    board[castling.rookFrom] = 0;
  }
  const isPawn = move.kind === 'p';
  return {
    board,
    turn: otherSide(position.turn),
    castling: position.castling === 0 ? 0 : rightsAfter(position.castling, from, to),
    enPassant: isPawn && Math.abs(from - to) === 16 ? (from + to) >> 1 : -1,
    halfmoveClock: isPawn || move.captured !== null ? 0 : position.halfmoveClock + 1,
    fullmoveNumber: position.fullmoveNumber + (position.turn === 'b' ? 1 : 0),
  };
}
