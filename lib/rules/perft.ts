// How many ways of play are there to a depth? The standard count that proves a move generator right.

import { legalMoves } from './legal-moves.ts';
import { playMove } from './play-move.ts';
import type { Position } from './position.ts';

/** The number of legal move sequences of exactly `depth` plies; 1 for depth 0. Takes time in proportion. */
export function perft(position: Position, depth: number): number {
  if (depth === 0) return 1;
  const moves = legalMoves(position);
  if (depth === 1) return moves.length;
  let count = 0;
  for (const move of moves) count += perft(playMove(position, move), depth - 1);
  return count;
}
