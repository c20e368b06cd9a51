// Which men are pinned to their king, and along which line.

import { RAYS, squaresAt } from './inner/geometry.ts';
import type { Side, Square } from './position.ts';

/** A pinned man and the direction from its king to it: it may move on that line only. */
export interface Pin {
  readonly square: Square;
  readonly direction: number;
}

/** The men of `side` that may not leave the line to their king; at most eight. */
export function pinsOf(board: Uint8Array, king: Square, side: Side): readonly Pin[] {
  const own = side === 'w' ? 0 : 8;
  const enemy = 8 - own;
  const pins: Pin[] = [];
  for (let direction = 0; direction < 8; direction += 1) {
    const slider = direction < 4 ? enemy + 4 : enemy + 3;
    let shield = -1;
    for (const square of squaresAt(RAYS, king * 8 + direction)) {
      const man = board[square] ?? 0;
      if (man === 0) continue;
      if (shield < 0 && (man & 8) === own) {
        shield = square;
        continue;
      }
      if (shield >= 0 && (man === slider || man === enemy + 5)) pins.push({ square: shield, direction });
      break;
    }
  }
  return pins;
}
