// What is known of a position in a mate question? In how many moves mate is proved, in how many it
// is disproved, and by which move; for positions of either side. Rule V0: a question starts with an
// empty table, which a new generation number makes of the old one without clearing it.

import { META, PROVER, PROVER_TABLE } from './layout';
import { positionKey } from './position';
import { tableBytes } from './table-size';
import { clockKey } from './zobrist';

// A row is four entries of 16 bytes: key u64, then u64: move 0-16, mate proved 17-24, mate
// disproved 25-32, effort 33-40, generation 48-63.
const GENERATION: usize = PROVER;
const ROW_MASK: usize = PROVER + 8;
/** No mate is proved. */
export const UNKNOWN: u32 = 255;
const EMPTY: u64 = (<u64>UNKNOWN) << 17;

/** Begins a question: nothing stored before is found any more. */
export function freshMateTable(): void {
  const generation = load<u64>(GENERATION) + 1;
  store<u64>(ROW_MASK, (<u64>tableBytes() >> 6) - 1);
  if (generation > 65535) {
    memory.fill(PROVER_TABLE, 0, tableBytes());
    store<u64>(GENERATION, 1);
  } else store<u64>(GENERATION, generation);
}

/** The key of the position on the board, its clock included where that counts (rule V5). */
// @ts-ignore: decorator
@inline
export function mateKey(): u64 {
  const clock = load<u32>(META) >> 16;
  return clock < 80 ? positionKey() : positionKey() ^ clockKey(clock);
}

// @ts-ignore: decorator
@inline
export function provedIn(entry: u64): u32 {
  return <u32>(entry >> 17) & 255;
}

// @ts-ignore: decorator
@inline
export function disprovedIn(entry: u64): u32 {
  return <u32>(entry >> 25) & 255;
}

// @ts-ignore: decorator
@inline
export function moveIn(entry: u64): u32 {
  return <u32>entry & 0x1ffff;
}

/** What is known; an entry that says nothing where nothing is. */
export function recallMate(key: u64): u64 {
  const row = PROVER_TABLE + ((<usize>(key & load<u64>(ROW_MASK))) << 6);
  const generation = load<u64>(GENERATION);
  for (let at = row; at < row + 64; at += 16) {
    if (load<u64>(at) != key) continue;
    const entry = load<u64>(at, 8);
    if (entry >> 48 == generation) return entry;
  }
  return EMPTY;
}

/** Adds what was found: mate proved in `proved` (or UNKNOWN), disproved in `disproved` (or 0), by `move`. */
export function storeMate(key: u64, proved: u32, disproved: u32, move: u32, effort: u32): void {
  const row = PROVER_TABLE + ((<usize>(key & load<u64>(ROW_MASK))) << 6);
  const generation = load<u64>(GENERATION);
  let place = row;
  let least: u64 = u64.MAX_VALUE;
  for (let at = row; at < row + 64; at += 16) {
    const entry = load<u64>(at, 8);
    const isOurs = entry >> 48 == generation;
    if (isOurs && load<u64>(at) == key) {
      proved = min<u32>(proved, provedIn(entry));
      disproved = max<u32>(disproved, disprovedIn(entry));
      if (!move) move = moveIn(entry);
      effort = max<u32>(effort, <u32>(entry >> 33) & 255);
      place = at;
      break;
    }
    const worth = isOurs ? ((entry >> 33) & 255) + 1 : 0;
    if (worth < least) {
      least = worth;
      place = at;
    }
  }
  store<u64>(place, key);
  store<u64>(
    place,
    <u64>(move & 0x1ffff) |
      ((<u64>proved) << 17) |
      ((<u64>disproved) << 25) |
      ((<u64>effort) << 33) |
      (generation << 48),
    8,
  );
}
