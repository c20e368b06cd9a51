// Which pawns may capture en passant, and whether any legally can: only then does the square belong
// to a position's identity (rule V6).

import { isAttackedOn, kingSquare } from './attacks.ts';
import { PAWN_TARGETS, squaresAt } from './inner/geometry.ts';
import type { Position, Square } from './position.ts';

/** The square of the pawn that an en passant capture takes. */
export function passedPawnSquare(position: Position): Square {
  return position.enPassant + (position.turn === 'w' ? -8 : 8);
}

/**
 * The squares of pawns that may legally take en passant. Both pawns leave their rank at once, which no
 * pin rule covers (8/8/8/K2pP2r/8/8/8/7k w - d6: exd6 is illegal), so the capture is tried out.
 */
export function enPassantCapturers(position: Position): readonly Square[] {
  const { board, turn, enPassant } = position;
  if (enPassant < 0) return [];
  const own = turn === 'w' ? 0 : 8;
  const capturers: Square[] = [];
  for (const from of squaresAt(PAWN_TARGETS, turn === 'w' ? 64 + enPassant : enPassant)) {
    if (board[from] !== own + 1) continue;
    const after = board.slice();
    after[from] = 0;
    after[passedPawnSquare(position)] = 0;
    after[enPassant] = own + 1;
    if (!isAttackedOn(after, kingSquare(after, turn), 8 - own, -1)) capturers.push(from);
  }
  return capturers;
}
