// Which 64-bit key has a position? Random numbers from a fixed seed, so that every machine has the same.

import { BB, BOARD, META, SIDE, ZOBRIST, ZOBRIST_CASTLING, ZOBRIST_CLOCK, ZOBRIST_EP } from './layout';

/** Toggled whenever Black is to move. */
export const BLACK_TO_MOVE: u64 = 0x9d39247e33776d41;

// Splitmix64 (Steele, Lea, Flood 2014).
// @ts-ignore: decorator
@inline
function mix(state: u64): u64 {
  let z = state;
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9;
  z = (z ^ (z >> 27)) * 0x94d049bb133111eb;
  return z ^ (z >> 31);
}

export function initZobrist(): void {
  let state: u64 = 0x7461696c70696563;
  // Man 0 and 8 are "no man": their keys stay 0, so that an empty square costs nothing.
  for (let man: u32 = 0; man < 16; man++) {
    for (let square: u32 = 0; square < 64; square++) {
      state += 0x9e3779b97f4a7c15;
      const isMan = (man & 7) >= 1 && (man & 7) <= 6;
      store<u64>(ZOBRIST + (((<usize>man) << 9) | ((<usize>square) << 3)), isMan ? mix(state) : 0);
    }
  }
  for (let n: usize = 0; n < 16; n++) {
    state += 0x9e3779b97f4a7c15;
    store<u64>(ZOBRIST_CASTLING + (n << 3), n ? mix(state) : 0);
  }
  for (let n: usize = 0; n < 8; n++) {
    state += 0x9e3779b97f4a7c15;
    store<u64>(ZOBRIST_EP + (n << 3), mix(state));
  }
  // Below 80 the clock is no part of a position (rule V5).
  for (let n: usize = 0; n < 160; n++) {
    state += 0x9e3779b97f4a7c15;
    store<u64>(ZOBRIST_CLOCK + (n << 3), n >= 80 ? mix(state) : 0);
  }
}

// @ts-ignore: decorator
@inline
export function manKey(man: u32, square: u32): u64 {
  return load<u64>((((<usize>man) << 9) | ((<usize>square) << 3)) + ZOBRIST);
}

// @ts-ignore: decorator
@inline
export function castlingKey(rights: u32): u64 {
  return load<u64>(((<usize>rights) << 3) + ZOBRIST_CASTLING);
}

// @ts-ignore: decorator
@inline
export function epKey(square: u32): u64 {
  return load<u64>(((<usize>(square & 7)) << 3) + ZOBRIST_EP);
}

/** What a half-move clock of 80 or more adds to the key of a mate question (rule V5); 0 below. */
export function clockKey(clock: u32): u64 {
  return clock < 80 ? 0 : load<u64>(((<usize>min<u32>(clock, 159)) << 3) + ZOBRIST_CLOCK);
}

/** The key computed from the board alone: what `make` keeps up to date step by step. */
export function keyFromBoard(): u64 {
  let key: u64 = 0;
  for (let square: u32 = 0; square < 64; square++) key ^= manKey(load<u8>(BOARD + square), square);
  const meta = load<u32>(META);
  key ^= castlingKey(meta & 15);
  const ep = (meta >> 8) & 255;
  if (ep < 64) key ^= epKey(ep);
  if (load<u32>(SIDE)) key ^= BLACK_TO_MOVE;
  return key;
}
