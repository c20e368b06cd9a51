// How does the kernel write a move, and how do we? From in the low six bits, to in the next six,
// the kind promoted to in three more, and two bits for castling, en passant and double steps.

import type { Uci } from '#lib/rules/move.ts';
import { squareName } from '#lib/rules/position.ts';
import type { Engine } from './create-engine.ts';
import { OUTPUT } from './inner/kernel-calls.ts';

/** The bits that name a move; what lies above is a mark of the moment. */
const MOVE_MASK = 0x1ffff;
const KINDS = ['', 'p', 'n', 'b', 'r', 'q'];

/** `e2e4` for a move as the kernel writes it; null for 0, no move. */
export function uciOf(move: number): Uci | null {
  if ((move & MOVE_MASK) === 0) return null;
  return squareName(move & 63) + squareName((move >> 6) & 63) + (KINDS[(move >> 12) & 7] ?? '');
}

/** All legal moves of the loaded position in the kernel's writing, in UCI order, so that no result depends on the generator's. */
export function listLegal(engine: Engine): { readonly move: number; readonly uci: Uci }[] {
  const count = engine.calls.listMoves(0);
  const bytes = engine.bytes();
  const moves: { move: number; uci: Uci }[] = [];
  for (let n = 0; n < count; n += 1) {
    const move = bytes.getUint32(OUTPUT + n * 4, true) & MOVE_MASK;
    const uci = uciOf(move);
    if (uci !== null) moves.push({ move, uci });
  }
  return moves.sort((a, b) => (a.uci < b.uci ? -1 : 1));
}
