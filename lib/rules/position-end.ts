// Is the game over here?

import { isCheck } from './attacks.ts';
import { hasLegalMove } from './legal-moves.ts';
import type { Position } from './position.ts';

/**
 * Checkmate, stalemate, too few men for any mate (rule V3), or null where play goes on. Too few means: bare
 * kings, one knight, or bishops that all stand on squares of one colour; other dead positions are not
 * recognised. The fifty-move rule and repetition depend on more than the position.
 */
export function positionEnd(position: Position): 'checkmate' | 'stalemate' | 'insufficient' | null {
  if (!hasLegalMove(position)) return isCheck(position) ? 'checkmate' : 'stalemate';
  return isInsufficient(position.board) ? 'insufficient' : null;
}

function isInsufficient(board: Uint8Array): boolean {
  let knights = 0;
  let darkBishops = 0;
  let lightBishops = 0;
  for (let square = 0; square < 64; square += 1) {
    const kind = (board[square] ?? 0) & 7;
    if (kind === 1 || kind === 4 || kind === 5) return false;
    if (kind === 2) knights += 1;
    if (kind !== 3) continue;
    if (((square & 7) + (square >> 3)) % 2 === 0) darkBishops += 1;
    else lightBishops += 1;
  }
  if (knights > 0) return knights === 1 && darkBishops + lightBishops === 0;
  return darkBishops === 0 || lightBishops === 0;
}
