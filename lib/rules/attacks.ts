// Which squares a side attacks, and who gives check.

import { KING_STEPS, KNIGHT_STEPS, PAWN_TARGETS, RAYS, squaresAt } from './inner/geometry.ts';
import type { Position, Side, Square } from './position.ts';

/** True if a man of `bySide` attacks the square; pins do not matter, as in the Laws (3.1.3). */
export function isAttacked(position: Position, square: Square, bySide: Side): boolean {
  return isAttackedOn(position.board, square, bySide === 'b' ? 8 : 0, -1);
}

/** True if the side to move is in check. */
export function isCheck(position: Position): boolean {
  const king = kingSquare(position.board, position.turn);
  return isAttackedOn(position.board, king, position.turn === 'w' ? 8 : 0, -1);
}

/** Where the king of a side stands; -1 if there is none (only before `checkPosition` has looked). */
export function kingSquare(board: Uint8Array, side: Side): Square {
  return board.indexOf(side === 'w' ? 6 : 14);
}

/**
 * True if the square is attacked on the bare board. `by` is 0 for White, 8 for Black; `seeThrough` is
 * a square taken as empty (the king that steps away along a ray), or -1.
 */
export function isAttackedOn(board: Uint8Array, square: Square, by: number, seeThrough: Square): boolean {
  for (const from of squaresAt(KNIGHT_STEPS, square)) if (board[from] === by + 2) return true;
  // A pawn attacks the square exactly if a pawn of the other side on the square would attack it.
  for (const from of squaresAt(PAWN_TARGETS, by === 0 ? 64 + square : square)) {
    if (board[from] === by + 1) return true;
  }
  for (const from of squaresAt(KING_STEPS, square)) if (board[from] === by + 6) return true;
  for (let direction = 0; direction < 8; direction += 1) {
    const slider = direction < 4 ? by + 4 : by + 3;
    for (const from of squaresAt(RAYS, square * 8 + direction)) {
      const man = board[from];
      if (man === 0 || from === seeThrough) continue;
      if (man === slider || man === by + 5) return true;
      break;
    }
  }
  return false;
}

/** All squares from which men of a side (0 White, 8 Black) attack the square. */
export function attackersOf(board: Uint8Array, square: Square, by: number): Square[] {
  const found: Square[] = [];
  for (const from of squaresAt(KNIGHT_STEPS, square)) if (board[from] === by + 2) found.push(from);
  for (const from of squaresAt(PAWN_TARGETS, by === 0 ? 64 + square : square)) {
    if (board[from] === by + 1) found.push(from);
  }
  for (const from of squaresAt(KING_STEPS, square)) if (board[from] === by + 6) found.push(from);
  for (let direction = 0; direction < 8; direction += 1) {
    const slider = direction < 4 ? by + 4 : by + 3;
    for (const from of squaresAt(RAYS, square * 8 + direction)) {
      const man = board[from];
      if (man === 0) continue;
      if (man === slider || man === by + 5) found.push(from);
      break;
    }
  }
  return found;
}
