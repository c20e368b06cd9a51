// How does a move change the board, and how is it taken back? Keys are kept up to date step by step.

import { bit, pawnAttacks } from './bitboards';
import {
  BB,
  BOARD,
  CASTLE,
  DOUBLE_PUSH,
  EN_PASSANT,
  KEY,
  META,
  RIGHTS_MASK,
  SIDE,
  SPECIAL,
  UNDO,
  UNDO_TOP,
} from './layout';
import { isEpLegal, men } from './position';
import { BLACK_TO_MOVE, castlingKey, epKey, manKey } from './zobrist';

// @ts-ignore: decorator
@inline
function toggle(man: u32, squares: u64): void {
  const slot = ((<usize>man) << 3) + BB;
  store<u64>(slot, load<u64>(slot) ^ squares);
  const all = ((<usize>(man & 8)) << 3) + BB;
  store<u64>(all, load<u64>(all) ^ squares);
}

// @ts-ignore: decorator
@inline
function put(square: u32, man: u32): void {
  store<u8>((<usize>square) + BOARD, <u8>man);
}

// The rook's way in castling, as two squares: from in the low byte, to in the high one.
// @ts-ignore: decorator
@inline
function rookWay(kingTo: u32): u32 {
  return (kingTo & 7) == 6 ? (kingTo + 1) | ((kingTo - 1) << 8) : (kingTo - 2) | ((kingTo + 1) << 8);
}

// Castling, en passant, promotion and double pushes: what they change beyond one man's way.
function makeSpecial(move: u32, man: u32, to: u32): u64 {
  const us = man & 8;
  const special = move & SPECIAL;
  if (special == EN_PASSANT) {
    const victim = us ^ 9;
    const square = to ^ 8;
    toggle(victim, bit(square));
    put(square, 0);
    return manKey(victim, square);
  }
  if (special == CASTLE) {
    const way = rookWay(to);
    const rook = us | 4;
    toggle(rook, bit(way & 255) | bit(way >> 8));
    put(way & 255, 0);
    put(way >> 8, rook);
    return manKey(rook, way & 255) ^ manKey(rook, way >> 8);
  }
  const promoted = (move >> 12) & 7;
  if (!promoted) return 0;
  const slot = ((<usize>man) << 3) + BB;
  store<u64>(slot, load<u64>(slot) ^ bit(to));
  const into = ((<usize>(us | promoted)) << 3) + BB;
  store<u64>(into, load<u64>(into) ^ bit(to));
  put(to, us | promoted);
  return manKey(man, to) ^ manKey(us | promoted, to);
}

/** Plays a legal move. */
export function make(move: u32): void {
  const from = move & 63;
  const to = (move >> 6) & 63;
  const man: u32 = load<u8>((<usize>from) + BOARD);
  const taken: u32 = load<u8>((<usize>to) + BOARD);
  const meta = load<u32>(META);
  const undo = <usize>load<u32>(UNDO_TOP);
  const before = load<u64>(KEY);
  store<u64>(undo, before);
  store<u32>(undo, meta, 8);
  store<u32>(undo, taken, 12);
  store<u32>(UNDO_TOP, <u32>undo + 16);
  let key = before ^ BLACK_TO_MOVE ^ manKey(man, from) ^ manKey(man, to);
  const ep = (meta >> 8) & 255;
  if (ep < 64) key ^= epKey(ep);
  const rights = meta & 15;
  let next = rights;
  if (rights) {
    next &= <u32>load<u8>((<usize>from) + RIGHTS_MASK) & <u32>load<u8>((<usize>to) + RIGHTS_MASK);
    key ^= castlingKey(rights) ^ castlingKey(next);
  }
  let ticks = (meta >> 16) + 1;
  if (taken) {
    toggle(taken, bit(to));
    key ^= manKey(taken, to);
    ticks = 0;
  }
  if ((man & 7) == 1) ticks = 0;
  toggle(man, bit(from) | bit(to));
  put(from, 0);
  put(to, man);
  let newEp: u32 = 64;
  const us = load<u32>(SIDE);
  store<u32>(SIDE, us ^ 8);
  if (move >> 12) {
    if ((move & SPECIAL) == DOUBLE_PUSH) {
      const passed = (from + to) >> 1;
      if (pawnAttacks(us, passed) & men(us ^ 9) && isEpLegal(passed)) {
        newEp = passed;
        key ^= epKey(passed);
      }
    } else key ^= makeSpecial(move, man, to);
  }
  store<u32>(META, next | (newEp << 8) | (ticks << 16));
  store<u64>(KEY, key);
}

function unmakeSpecial(move: u32, us: u32, to: u32): void {
  const special = move & SPECIAL;
  if (special == EN_PASSANT) {
    toggle(us ^ 9, bit(to ^ 8));
    put(to ^ 8, us ^ 9);
  } else if (special == CASTLE) {
    const way = rookWay(to);
    const rook = us | 4;
    toggle(rook, bit(way & 255) | bit(way >> 8));
    put(way & 255, rook);
    put(way >> 8, 0);
  }
}

/** Takes back the move that was played last. */
export function unmake(move: u32): void {
  const from = move & 63;
  const to = (move >> 6) & 63;
  const undo = <usize>load<u32>(UNDO_TOP) - 16;
  store<u32>(UNDO_TOP, <u32>undo);
  const us = load<u32>(SIDE) ^ 8;
  store<u32>(SIDE, us);
  store<u64>(KEY, load<u64>(undo));
  store<u32>(META, load<u32>(undo, 8));
  const taken = load<u32>(undo, 12);
  let man: u32 = load<u8>((<usize>to) + BOARD);
  if ((move >> 12) & 7) {
    toggle(man, bit(to));
    man = us | 1;
    toggle(man, bit(from));
  } else {
    toggle(man, bit(from) | bit(to));
    if (move >> 12) unmakeSpecial(move, us, to);
  }
  put(from, man);
  put(to, taken);
  if (taken) toggle(taken, bit(to));
}

/** Passes the move to the other side (for null moves; never when in check). */
export function makeNull(): void {
  const meta = load<u32>(META);
  const undo = <usize>load<u32>(UNDO_TOP);
  store<u64>(undo, load<u64>(KEY));
  store<u32>(undo, meta, 8);
  store<u32>(undo, 0, 12);
  store<u32>(UNDO_TOP, <u32>undo + 16);
  const ep = (meta >> 8) & 255;
  let key = load<u64>(KEY) ^ BLACK_TO_MOVE;
  if (ep < 64) key ^= epKey(ep);
  store<u64>(KEY, key);
  store<u32>(META, (meta & 15) | (64 << 8) | (((meta >> 16) + 1) << 16));
  store<u32>(SIDE, load<u32>(SIDE) ^ 8);
}

export function unmakeNull(): void {
  const undo = <usize>load<u32>(UNDO_TOP) - 16;
  store<u32>(UNDO_TOP, <u32>undo);
  store<u64>(KEY, load<u64>(undo));
  store<u32>(META, load<u32>(undo, 8));
  store<u32>(SIDE, load<u32>(SIDE) ^ 8);
}

/** How often the position on the board stood before since the last irreversible move, within the undo stack. */
export function countRepetitions(): u32 {
  const key = load<u64>(KEY);
  const top = <usize>load<u32>(UNDO_TOP);
  let plies = min<i32>(<i32>(load<u32>(META) >> 16), <i32>((top - UNDO) >> 4));
  let count: u32 = 0;
  let at = top - 32;
  plies -= 2;
  while (plies >= 0) {
    if (load<u64>(at) == key) count++;
    at -= 32;
    plies -= 2;
  }
  return count;
}
