// Which position stands on the kernel's board, and who attacks what in it?

import { bit, kingAttacks, knightAttacks, pawnAttacks } from './bitboards';
import { BB, BISHOP_EMPTY, BOARD, INPUT, KEY, META, ROOK_EMPTY, SIDE, UNDO, UNDO_TOP } from './layout';
import { bishopAttacks, rookAttacks } from './magics';
import { keyFromBoard } from './zobrist';

/** The bitboard of a man, or of all men of a side (0 or 8). */
// @ts-ignore: decorator
@inline
export function men(man: u32): u64 {
  return load<u64>(((<usize>man) << 3) + BB);
}

// @ts-ignore: decorator
@inline
export function manOn(square: u32): u32 {
  return load<u8>((<usize>square) + BOARD);
}

// @ts-ignore: decorator
@inline
export function sideToMove(): u32 {
  return load<u32>(SIDE);
}

// @ts-ignore: decorator
@inline
export function occupied(): u64 {
  return load<u64>(BB) | load<u64>(BB + 64);
}

// @ts-ignore: decorator
@inline
export function kingSquare(side: u32): u32 {
  return <u32>ctz(men(side + 6));
}

// @ts-ignore: decorator
@inline
export function castlingRights(): u32 {
  return load<u32>(META) & 15;
}

/** The en passant square, or 64. Set only where such a capture is legal. */
// @ts-ignore: decorator
@inline
export function epSquare(): u32 {
  return (load<u32>(META) >> 8) & 255;
}

/** Plies since the last capture or pawn move. */
// @ts-ignore: decorator
@inline
export function clock(): u32 {
  return load<u32>(META) >> 16;
}

// @ts-ignore: decorator
@inline
export function positionKey(): u64 {
  return load<u64>(KEY);
}

// @ts-ignore: decorator
@inline
export function rooksAndQueens(side: u32): u64 {
  return men(side + 4) | men(side + 5);
}

// @ts-ignore: decorator
@inline
export function bishopsAndQueens(side: u32): u64 {
  return men(side + 3) | men(side + 5);
}

/** Does a rook, bishop or queen of `by` attack `square` with these men on the board? */
// @ts-ignore: decorator
@inline
export function isAttackedBySlider(square: u32, by: u32, occ: u64): bool {
  const rooks = rooksAndQueens(by) & occ;
  if (load<u64>(((<usize>square) << 3) + ROOK_EMPTY) & rooks && rookAttacks(square, occ) & rooks) return true;
  const bishops = bishopsAndQueens(by) & occ;
  return (
    (load<u64>(((<usize>square) << 3) + BISHOP_EMPTY) & bishops) != 0 && (bishopAttacks(square, occ) & bishops) != 0
  );
}

/** Does any man of `by` attack `square` with these men on the board? A man not in `occ` attacks nothing. */
export function isAttacked(square: u32, by: u32, occ: u64): bool {
  if (knightAttacks(square) & men(by + 2) & occ) return true;
  if (pawnAttacks(by ^ 8, square) & men(by + 1) & occ) return true;
  if (kingAttacks(square) & men(by + 6)) return true;
  return isAttackedBySlider(square, by, occ);
}

/** Every man of either side that attacks `square` with these men on the board. */
export function attackersTo(square: u32, occ: u64): u64 {
  return (
    (pawnAttacks(8, square) & men(1)) |
    (pawnAttacks(0, square) & men(9)) |
    (knightAttacks(square) & (men(2) | men(10))) |
    (kingAttacks(square) & (men(6) | men(14))) |
    (rookAttacks(square, occ) & (rooksAndQueens(0) | rooksAndQueens(8))) |
    (bishopAttacks(square, occ) & (bishopsAndQueens(0) | bishopsAndQueens(8)))
  );
}

/** Is the king of the side to move attacked? */
export function inCheck(): bool {
  const us = sideToMove();
  return isAttacked(kingSquare(us), us ^ 8, occupied());
}

/** May a pawn of the side to move take en passant on `square`, its king not left in check? */
export function isEpLegal(square: u32): bool {
  const us = sideToMove();
  const them = us ^ 8;
  const victim = bit(square ^ 8);
  let takers = pawnAttacks(them, square) & men(us + 1);
  while (takers) {
    const taker = takers & (0 - takers);
    takers ^= taker;
    if (!isAttacked(kingSquare(us), them, (occupied() ^ taker ^ victim) | bit(square))) return true;
  }
  return false;
}

/**
 * Takes the position in INPUT onto the board and empties the undo stack. An en passant square
 * without a legal capture is dropped, so that equal positions have equal keys.
 */
export function loadPosition(): void {
  for (let man: usize = 0; man < 16; man++) store<u64>(BB + (man << 3), 0);
  for (let square: u32 = 0; square < 64; square++) {
    const man: u32 = load<u8>(INPUT + square);
    store<u8>(BOARD + square, <u8>man);
    if (!man) continue;
    const slot = BB + ((<usize>man) << 3);
    store<u64>(slot, load<u64>(slot) | bit(square));
    const all = BB + ((<usize>(man & 8)) << 3);
    store<u64>(all, load<u64>(all) | bit(square));
  }
  store<u32>(SIDE, load<u8>(INPUT, 64));
  const ep: u32 = load<u8>(INPUT, 66);
  const isReal = ep < 64 && isEpLegal(ep);
  const rights: u32 = load<u8>(INPUT, 65);
  store<u32>(META, (rights & 15) | ((isReal ? ep : 64) << 8) | ((<u32>load<u16>(INPUT, 68)) << 16));
  store<u64>(KEY, keyFromBoard());
  store<u32>(UNDO_TOP, <u32>UNDO);
}
