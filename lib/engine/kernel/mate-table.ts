// What is known of a position in a mate question? In how many moves mate is proved, in how many it
// is disproved, and by which move; for positions of either side. Rule V0: a question starts with an
// empty table, which a new generation number makes of the old one without clearing it.

import { META, PROVER, PROVER_TABLE, RIGHTS_MASK } from './layout';
import { manOn, positionKey } from './position';
import { tableBytes } from './table-size';
import { BLACK_TO_MOVE, castlingKey, clockKey, epKey, manKey } from './zobrist';

// A row is four entries of 16 bytes: key u64, then u64: move 0-16, mate proved 17-24, mate
// disproved 25-32, effort 33-40, generation 48-63.
const GENERATION: usize = PROVER;
const ROW_MASK: usize = PROVER + 8;
/** Entries in use, u64, and how many may be before the table grows. */
const FILLED: usize = PROVER + 16;
const ROOM: usize = PROVER + 24;
/** No mate is proved. */
export const UNKNOWN: u32 = 255;
const EMPTY: u64 = (<u64>UNKNOWN) << 17;
/** 256 KiB: what the processor holds close by. Most questions never need more. */
const FIRST_ROWS: u64 = 4096;

/** Begins a question: nothing stored before is found any more, and the table is small again. */
export function freshMateTable(): void {
  const generation = load<u64>(GENERATION) + 1;
  if (generation > 65535) {
    memory.fill(PROVER_TABLE, 0, tableBytes());
    store<u64>(GENERATION, 1);
  } else store<u64>(GENERATION, generation);
  store<u64>(FILLED, 0);
  setRows(FIRST_ROWS);
}

// Half full is full: then every row still has a place. At its last size the table fills up and forgets.
function setRows(rows: u64): void {
  store<u64>(ROW_MASK, rows - 1);
  store<u64>(ROOM, rows << 6 < tableBytes() ? rows << 1 : u64.MAX_VALUE);
}

// Twice the rows: each entry stays in its row or moves to the same place in the row's new half. Memory
// that was never touched costs nothing, so a large table is taken only by questions that need one.
function grow(): void {
  const rows = load<u64>(ROW_MASK) + 1;
  const generation = load<u64>(GENERATION);
  const distance = <usize>(rows << 6);
  const end = PROVER_TABLE + distance;
  for (let at = PROVER_TABLE; at < end; at += 16) {
    const entry = load<u64>(at, 8);
    const moves = entry >> 48 == generation && (load<u64>(at) & rows) != 0;
    store<u64>(at + distance, moves ? load<u64>(at) : 0);
    store<u64>(at + distance, moves ? entry : 0, 8);
    if (moves) store<u64>(at, 0, 8);
  }
  setRows(rows << 1);
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

/**
 * The key of the position after a legal move, without making it. 0 where that would take more than a
 * few steps: promotion, castling, en passant, double steps, or near the fifty-move rule.
 */
export function keyAfter(move: u32): u64 {
  const meta = load<u32>(META);
  if (move >> 12 & 31 || meta >> 16 >= 79) return 0;
  const from = move & 63;
  const to = (move >> 6) & 63;
  const man = manOn(from);
  const taken = manOn(to);
  let key = positionKey() ^ BLACK_TO_MOVE ^ manKey(man, from) ^ manKey(man, to) ^ manKey(taken, to);
  const ep = (meta >> 8) & 255;
  if (ep < 64) key ^= epKey(ep);
  const rights = meta & 15;
  if (rights) {
    const kept =
      rights & <u32>load<u8>((<usize>from) + RIGHTS_MASK) & <u32>load<u8>((<usize>to) + RIGHTS_MASK);
    key ^= castlingKey(rights) ^ castlingKey(kept);
  }
  return key;
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
  let isNew = false;
  for (let at = row; at < row + 64; at += 16) {
    const entry = load<u64>(at, 8);
    const isOurs = entry >> 48 == generation;
    if (isOurs && load<u64>(at) == key) {
      proved = min<u32>(proved, provedIn(entry));
      disproved = max<u32>(disproved, disprovedIn(entry));
      if (!move) move = moveIn(entry);
      effort = max<u32>(effort, <u32>(entry >> 33) & 255);
      place = at;
      isNew = false;
      break;
    }
    const worth = isOurs ? ((entry >> 33) & 255) + 1 : 0;
    if (worth < least) {
      least = worth;
      place = at;
      isNew = !isOurs;
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
  if (!isNew) return;
  const filled = load<u64>(FILLED) + 1;
  store<u64>(FILLED, filled);
  if (filled >= load<u64>(ROOM)) grow();
}
