// What is a man worth on a square? Made by short formulas from the distance to edge and centre.

import { bit } from './bitboards';
import { FILE_NEIGHBOURS, PASSED_MASK, SQUARE_VALUES } from './search-layout';

const MIDDLE: StaticArray<i32> = [0, 80, 375, 390, 560, 1160, 0];
const ENDING: StaticArray<i32> = [0, 112, 395, 415, 645, 1230, 0];

function pawnMiddle(file: i32, rank: i32): i32 {
  const inner = min(file, 7 - file);
  let value = (rank - 1) * 4 - (inner == 0 ? 4 : 0);
  if (inner == 3) value += rank >= 3 ? 16 : rank == 1 ? -10 : 6;
  if (inner == 2) value += rank >= 3 ? 8 : 0;
  return value;
}

function kingMiddle(file: i32, rank: i32): i32 {
  const inner = min(file, 7 - file);
  const home = inner == 0 ? 20 : inner == 1 ? 30 : inner == 2 ? 4 : -10;
  return rank == 0 ? home : home - 18 - 14 * min(rank, 4);
}

function middleOf(kind: i32, file: i32, rank: i32): i32 {
  const inner = min(file, 7 - file);
  const depth = min(rank, 7 - rank);
  if (kind == 1) return pawnMiddle(file, rank);
  if (kind == 2) return -44 + 10 * (inner + depth) + (rank >= 3 && rank <= 5 && inner >= 2 ? 10 : 0);
  if (kind == 3) return -16 + 5 * (inner + depth) + (file == rank || file == 7 - rank ? 6 : 0) - (rank == 0 ? 6 : 0);
  if (kind == 4) return -6 + 4 * inner + (rank == 6 ? 16 : 0);
  if (kind == 5) return -6 + 2 * (inner + depth) - (rank == 0 ? 2 : 0);
  return kingMiddle(file, rank);
}

function endingOf(kind: i32, file: i32, rank: i32): i32 {
  const inner = min(file, 7 - file);
  const depth = min(rank, 7 - rank);
  if (kind == 1) return (rank - 1) * (rank - 1) * 2 - 6;
  if (kind == 2) return -32 + 9 * (inner + depth);
  if (kind == 3) return -12 + 4 * (inner + depth);
  if (kind == 4) return rank == 6 ? 12 : 0;
  if (kind == 5) return -26 + 8 * (inner + depth);
  return -40 + 12 * (inner + depth);
}

/** Fills the values of men on squares (White's positive, Black's negative) and the pawn masks. */
export function initSquareValues(): void {
  for (let man: u32 = 0; man < 16; man++) {
    const kind = <i32>(man & 7);
    if (kind == 0 || kind == 7) continue;
    for (let square: i32 = 0; square < 64; square++) {
      const isBlack = man > 8;
      const file = square & 7;
      const rank = isBlack ? 7 - (square >> 3) : square >> 3;
      const sign = isBlack ? -1 : 1;
      const at = SQUARE_VALUES + (((<usize>man) << 8) | ((<usize>square) << 2));
      store<i16>(at, <i16>(sign * (unchecked(MIDDLE[kind]) + middleOf(kind, file, rank))));
      store<i16>(at, <i16>(sign * (unchecked(ENDING[kind]) + endingOf(kind, file, rank))), 2);
    }
  }
  for (let square: i32 = 0; square < 64; square++) fillPawnMasks(square);
}

function fillPawnMasks(square: i32): void {
  const file = square & 7;
  const rank = square >> 3;
  let beside: u64 = 0;
  let above: u64 = 0;
  let below: u64 = 0;
  for (let other: i32 = max(file - 1, 0); other <= min(file + 1, 7); other++) {
    for (let far: i32 = 0; far < 8; far++) {
      const here = bit(far * 8 + other);
      if (other != file) beside |= here;
      if (far > rank) above |= here;
      if (far < rank) below |= here;
    }
  }
  store<u64>(FILE_NEIGHBOURS + ((<usize>square) << 3), beside);
  store<u64>(PASSED_MASK + ((<usize>square) << 3), above);
  store<u64>(PASSED_MASK + 512 + ((<usize>square) << 3), below);
}
