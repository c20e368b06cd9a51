// What does the search remember of a position? Four entries of 16 bytes a row; of the big table a
// search always uses the same part, so that a verdict does not depend on how much memory there is.

import { HEAP_BASE } from './layout';
import { MATE_BOUND } from './search-layout';

/** 16 MiB: 2^18 rows of 64 bytes. */
const TABLE_SIZE: usize = 1 << 24;
const ROW_MASK: u64 = (1 << 18) - 1;

export const EXACT: u32 = 3;
export const AT_LEAST: u32 = 1;
export const AT_MOST: u32 = 2;

let generation: u32 = 0;
/** The entry found by the last `recall`: move, bound, depth, value, static value. */
export let foundMove: u32 = 0;
export let foundBound: u32 = 0;
export let foundDepth: i32 = 0;
export let foundValue: i32 = 0;
export let foundStatic: i32 = 0;

/** Forgets everything. */
export function clearHash(): void {
  memory.fill(HEAP_BASE, 0, TABLE_SIZE);
  generation = 0;
}

/** A new depth begins: entries of former ones give way first. */
export function ageHash(): void {
  generation = (generation + 1) & 31;
}

// @ts-ignore: decorator
@inline
function rowOf(key: u64): usize {
  return HEAP_BASE + ((<usize>(key & ROW_MASK)) << 6);
}

/** Looks a position up; `ply` makes mate distances count from the root. */
export function recall(key: u64, ply: i32): bool {
  const row = rowOf(key);
  for (let at = row; at < row + 64; at += 16) {
    if (load<u64>(at) != key) continue;
    const word = load<u32>(at, 8);
    if (word == 0) continue;
    foundMove = word & 0x1ffff;
    foundBound = (word >> 17) & 3;
    foundDepth = <i32>((word >> 19) & 255);
    const value: i32 = load<i16>(at, 12);
    foundValue = value >= MATE_BOUND ? value - ply : value <= -MATE_BOUND ? value + ply : value;
    foundStatic = load<i16>(at, 14);
    return true;
  }
  return false;
}

/** Remembers a result. */
export function remember(key: u64, move: u32, bound: u32, depth: i32, value: i32, fixed: i32, ply: i32): void {
  const row = rowOf(key);
  let place = row;
  let least = i32.MAX_VALUE;
  let kept: u32 = move;
  for (let at = row; at < row + 64; at += 16) {
    const word = load<u32>(at, 8);
    if (load<u64>(at) == key && word != 0) {
      if (move == 0) kept = word & 0x1ffff;
      place = at;
      break;
    }
    const age = (generation - (word >> 27)) & 31;
    const worth = word == 0 ? -1000 : <i32>((word >> 19) & 255) - 4 * <i32>age;
    if (worth < least) {
      least = worth;
      place = at;
    }
  }
  const stored = value >= MATE_BOUND ? value + ply : value <= -MATE_BOUND ? value - ply : value;
  store<u64>(place, key);
  store<u32>(place, kept | (bound << 17) | ((<u32>max(depth, 0)) << 19) | (generation << 27), 8);
  store<i16>(place, <i16>stored, 12);
  store<i16>(place, <i16>fixed, 14);
}
