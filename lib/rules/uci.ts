// Moves in the coordinate form of the UCI protocol.

import { legalMoves } from './legal-moves.ts';
import type { Move, Uci } from './move.ts';
import { playMove } from './play-move.ts';
import { type Position, squareName } from './position.ts';

/** `e2e4`, `e1g1` for castling, `a7a8q`. */
export function writeUci(move: Move): Uci {
  return squareName(move.from) + squareName(move.to) + (move.promotion ?? '');
}

/** The legal move that the text names, or null: for text that is no move, and for a move not legal here. */
export function findUci(position: Position, text: string): Move | null {
  if (text.length < 4 || text.length > 5) return null;
  return legalMoves(position).find((move) => writeUci(move) === text) ?? null;
}

/** The position after a move in UCI form, or null where it is not legal. */
export function playUci(position: Position, uci: Uci): Position | null {
  const move = findUci(position, uci);
  return move === null ? null : playMove(position, move);
}
