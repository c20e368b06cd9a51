// Moves in the coordinate form of the UCI protocol.

import { legalMoves } from './legal-moves.ts';
import type { Move, Uci } from './move.ts';
import { KIND_BIT, movesTo } from './moves-to.ts';
import { playMove } from './play-move.ts';
import { kindOf, type Position, parseSquare, squareName } from './position.ts';

/** `e2e4`, `e1g1` for castling, `a7a8q`. */
export function writeUci(move: Move): Uci {
  return squareName(move.from) + squareName(move.to) + (move.promotion ?? '');
}

/** The legal move that the text names, or null: for text that is no move, and for a move not legal here. */
export function findUci(position: Position, text: string): Move | null {
  if (text.length < 4 || text.length > 5) return null;
  const from = parseSquare(text.slice(0, 2));
  const to = parseSquare(text.slice(2, 4));
  const kind = from === null ? null : kindOf(position.board[from] ?? 0);
  if (from === null || to === null || kind === null) return null;
  const isCastling = kind === 'k' && Math.abs(to - from) === 2;
  const moves = isCastling ? legalMoves(position) : movesTo(position, to, KIND_BIT[kind]);
  return moves.find((move) => move.from === from && writeUci(move) === text) ?? null;
}

/** The position after a move in UCI form, or null where it is not legal. */
export function playUci(position: Position, uci: Uci): Position | null {
  const move = findUci(position, uci);
  return move === null ? null : playMove(position, move);
}
