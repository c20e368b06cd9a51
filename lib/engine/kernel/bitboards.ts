// Which squares do kings, knights and pawns reach, and what lies between two squares? Filled once.

import {
  BETWEEN,
  BISHOP_EMPTY,
  KING,
  KNIGHT,
  LINE,
  PAWN,
  RAYS,
  RIGHTS_MASK,
  ROOK_EMPTY,
} from './layout';
import { initMagics, slowBishopAttacks, slowRookAttacks } from './magics';

export const FILE_A: u64 = 0x0101010101010101;
export const FILE_H: u64 = 0x8080808080808080;
export const RANK_1: u64 = 0xff;
export const RANK_8: u64 = 0xff00000000000000;

// @ts-ignore: decorator
@inline
export function bit(square: u32): u64 {
  return (<u64>1) << (<u64>square);
}

// @ts-ignore: decorator
@inline
export function knightAttacks(square: u32): u64 {
  return load<u64>(((<usize>square) << 3) + KNIGHT);
}

// @ts-ignore: decorator
@inline
export function kingAttacks(square: u32): u64 {
  return load<u64>(((<usize>square) << 3) + KING);
}

/** Squares attacked by a pawn of `side` (0 or 8) on `square`. */
// @ts-ignore: decorator
@inline
export function pawnAttacks(side: u32, square: u32): u64 {
  return load<u64>((((<usize>side) << 6) + ((<usize>square) << 3)) + PAWN);
}

/** Squares attacked by all `pawns` of `side` together. */
// @ts-ignore: decorator
@inline
export function pawnSpan(side: u32, pawns: u64): u64 {
  return side
    ? ((pawns & ~FILE_A) >> 9) | ((pawns & ~FILE_H) >> 7)
    : ((pawns & ~FILE_A) << 7) | ((pawns & ~FILE_H) << 9);
}

/** Squares attacked by all `knights` together. */
// @ts-ignore: decorator
@inline
export function knightSpan(knights: u64): u64 {
  const one = ((knights >> 1) & ~FILE_H) | ((knights << 1) & ~FILE_A);
  const two = ((knights >> 2) & 0x3f3f3f3f3f3f3f3f) | ((knights << 2) & 0xfcfcfcfcfcfcfcfc);
  return (one << 16) | (one >> 16) | (two << 8) | (two >> 8);
}

// @ts-ignore: decorator
@inline
export function between(a: u32, b: u32): u64 {
  return load<u64>((((<usize>a) << 9) | ((<usize>b) << 3)) + BETWEEN);
}

/** The whole line through two squares, or 0 where they share none. */
// @ts-ignore: decorator
@inline
export function line(a: u32, b: u32): u64 {
  return load<u64>((((<usize>a) << 9) | ((<usize>b) << 3)) + LINE);
}

function step(square: u32, files: i32, ranks: i32): u64 {
  const file = <i32>(square & 7) + files;
  const rank = <i32>(square >> 3) + ranks;
  return file >= 0 && file < 8 && rank >= 0 && rank < 8 ? bit(<u32>(rank * 8 + file)) : 0;
}

function ray(square: u32, files: i32, ranks: i32): u64 {
  let set: u64 = 0;
  for (let n: i32 = 1; n < 8; n++) set |= step(square, files * n, ranks * n);
  return set;
}

function fillLeapers(square: u32): void {
  const at: usize = (<usize>square) << 3;
  let knight: u64 = 0;
  let king: u64 = 0;
  for (let files: i32 = -2; files <= 2; files++) {
    for (let ranks: i32 = -2; ranks <= 2; ranks++) {
      const size = files * files + ranks * ranks;
      if (size == 5) knight |= step(square, files, ranks);
      if (size == 1 || size == 2) king |= step(square, files, ranks);
    }
  }
  store<u64>(KNIGHT + at, knight);
  store<u64>(KING + at, king);
  store<u64>(PAWN + at, step(square, -1, 1) | step(square, 1, 1));
  store<u64>(PAWN + 512 + at, step(square, -1, -1) | step(square, 1, -1));
}

function fillRays(square: u32): void {
  const at: usize = RAYS + ((<usize>square) << 3);
  store<u64>(at, ray(square, 0, 1));
  store<u64>(at, ray(square, 1, 0), 512);
  store<u64>(at, ray(square, 1, 1), 1024);
  store<u64>(at, ray(square, -1, 1), 1536);
  store<u64>(at, ray(square, 0, -1), 2048);
  store<u64>(at, ray(square, -1, 0), 2560);
  store<u64>(at, ray(square, -1, -1), 3072);
  store<u64>(at, ray(square, 1, -1), 3584);
}

function fillLines(a: u32): void {
  for (let b: u32 = 0; b < 64; b++) {
    if (a == b) continue;
    const at: usize = ((<usize>a) << 9) | ((<usize>b) << 3);
    const both = bit(a) | bit(b);
    if (slowRookAttacks(a, 0) & bit(b)) {
      store<u64>(BETWEEN + at, slowRookAttacks(a, bit(b)) & slowRookAttacks(b, bit(a)));
      store<u64>(LINE + at, (slowRookAttacks(a, 0) & slowRookAttacks(b, 0)) | both);
    } else if (slowBishopAttacks(a, 0) & bit(b)) {
      store<u64>(BETWEEN + at, slowBishopAttacks(a, bit(b)) & slowBishopAttacks(b, bit(a)));
      store<u64>(LINE + at, (slowBishopAttacks(a, 0) & slowBishopAttacks(b, 0)) | both);
    }
  }
}

/** Fills every table of squares. Called once, before anything else. */
export function initTables(): void {
  for (let square: u32 = 0; square < 64; square++) {
    fillLeapers(square);
    fillRays(square);
    store<u8>(RIGHTS_MASK + square, 15);
  }
  store<u8>(RIGHTS_MASK + 4, 12);
  store<u8>(RIGHTS_MASK + 7, 14);
  store<u8>(RIGHTS_MASK, 13);
  store<u8>(RIGHTS_MASK + 60, 3);
  store<u8>(RIGHTS_MASK + 63, 11);
  store<u8>(RIGHTS_MASK + 56, 7);
  for (let square: u32 = 0; square < 64; square++) {
    store<u64>(ROOK_EMPTY + ((<usize>square) << 3), slowRookAttacks(square, 0));
    store<u64>(BISHOP_EMPTY + ((<usize>square) << 3), slowBishopAttacks(square, 0));
    fillLines(square);
  }
  initMagics();
}
