// Retrograde analysis: from the mates backwards to every position that is won or lost, by exact
// distance in moves. A move that keeps all men is an edge inside the table, followed backwards;
// captures and promotions are looked up in finished tables once, before the first step.
//
// Per side and place: VALUE (see lookup.ts), LEFT (moves not yet known to lose; 0 untracked) and
// OUTSIDE (best result by capture or promotion, as a value byte, with 127 for a draw).

import { attackSet, besides, PAWN } from './attack-sets';
import {
  men,
  hasEnPassant,
  places,
  kindAt,
  sideAt,
  squareAt,
  unpack,
  placeAfter,
  isCoded,
  trueSquare,
} from './layout';
import { ask, lookUp, ILLEGAL, LOST } from './lookup';

const DRAWN_OUTSIDE: i32 = 127;

let value: usize = 0;
let left: usize = 0;
let outside: usize = 0;
/** The farthest distance that waits in OUTSIDE. */
let farthest: i32 = 0;

let occupied: u64 = 0;
let outcome: i32 = 0;
let keeping: i32 = 0;
let leaving: i32 = 0;

/** Sets where the three arrays lie, each of 2 * places bytes, all zero. */
export function setArrays(start: usize): void {
  value = start;
  left = start + 2 * places;
  outside = start + 4 * places;
  farthest = 0;
}

function readBoard(place: i32): void {
  unpack(place);
  occupied = 0;
  for (let slot = 0; slot < men; slot++) occupied |= (<u64>1) << trueSquare(slot, squareAt(slot));
}

function isPawnMisplaced(slot: i32, turn: i32): bool {
  const square = squareAt(slot);
  const rank = square >> 3;
  if (rank > 0 && rank < 7) return false;
  if (!isCoded(slot, square) || sideAt(slot) == turn) return true;
  const stands = trueSquare(slot, square);
  const step = sideAt(slot) == 0 ? 8 : -8;
  const behind = ((<u64>1) << (stands - step)) | ((<u64>1) << (stands - 2 * step));
  if ((occupied & behind) != 0) return true;
  for (let other = 1; other < men - 1; other++) {
    if (kindAt(other) != PAWN || sideAt(other) != turn) continue;
    if ((besides(stands) & ((<u64>1) << squareAt(other))) != 0) return false;
  }
  return true;
}

function attacked(square: i32, by: i32): bool {
  for (let slot = 0; slot < men; slot++) {
    if (sideAt(slot) != by) continue;
    const from = trueSquare(slot, squareAt(slot));
    if ((attackSet(kindAt(slot), by, from, occupied) & ((<u64>1) << square)) != 0) return true;
  }
  return false;
}

// @ts-ignore: decorator
@inline
function kingOf(side: i32): i32 {
  return squareAt(side == 0 ? 0 : men - 1);
}

function isLegal(place: i32, turn: i32): bool {
  if (<i32>popcnt(occupied) != men) return false;
  for (let slot = 1; slot < men - 1; slot++) {
    if (kindAt(slot) == PAWN && isPawnMisplaced(slot, turn)) return false;
  }
  return !attacked(kingOf(1 - turn), turn);
}

/** First pass over some places: which are legal positions, for either side to move. */
export function markLegal(from: i32, to: i32): void {
  for (let place = from; place < to; place++) {
    readBoard(place);
    for (let turn = 0; turn < 2; turn++) {
      if (!isLegal(place, turn)) store<u8>(value + turn * places + place, <u8>ILLEGAL);
    }
  }
}

/** Takes in the result of a capture or promotion, from the side that then moves. */
function noteOutcome(result: i32): void {
  if (result == ILLEGAL) return;
  if (result < 0) unreachable();
  leaving++;
  if (result >= LOST) {
    const won = result - LOST + 1;
    if (outcome == 0 || outcome >= DRAWN_OUTSIDE || won < outcome) outcome = won;
  } else if (result == 0) {
    if (outcome == 0 || outcome >= LOST) outcome = DRAWN_OUTSIDE;
  } else if (outcome == 0 || (outcome >= LOST && outcome < LOST + result)) {
    outcome = LOST + result;
  }
}

/** Looks up the position in which the man in `slot` stands on `to` as `kind` and the man in `gone` is off. */
function leave(slot: i32, to: i32, kind: i32, gone: i32): void {
  let count = 0;
  for (let other = 0; other < men; other++) {
    if (other == gone) continue;
    if (other == slot) ask(count, kind, sideAt(other), to);
    else ask(count, kindAt(other), sideAt(other), trueSquare(other, squareAt(other)));
    count++;
  }
  noteOutcome(lookUp(count, 1 - sideAt(slot)));
}

function leaveAll(slot: i32, to: i32, gone: i32): void {
  if (kindAt(slot) == PAWN && (to >> 3 == 0 || to >> 3 == 7)) {
    for (let kind = PAWN + 1; kind <= PAWN + 4; kind++) leave(slot, to, kind, gone);
  } else leave(slot, to, kindAt(slot), gone);
}

/** A move inside the table counts if it leads to a legal position. */
function keep(place: i32, slot: i32, to: i32): void {
  const next = placeAfter(place, slot, to);
  if (load<u8>(value + (1 - sideAt(slot)) * places + next) != ILLEGAL) keeping++;
}

/** Where a double step lands in the table: on the coded square if an enemy pawn stands beside it. */
function doubleStepTarget(side: i32, to: i32): i32 {
  if (!hasEnPassant) return to;
  for (let other = 1; other < men - 1; other++) {
    if (kindAt(other) != PAWN || sideAt(other) == side) continue;
    if ((besides(to) & ((<u64>1) << trueSquare(other, squareAt(other)))) == 0) continue;
    return side == 0 ? to - 24 : to + 24;
  }
  return to;
}

/** The place with an enemy's en passant code undone: any move ends that right. */
function settled(place: i32): i32 {
  if (!hasEnPassant) return place;
  for (let slot = 1; slot < men - 1; slot++) {
    const square = squareAt(slot);
    if (isCoded(slot, square)) return placeAfter(place, slot, trueSquare(slot, square));
  }
  return place;
}

function countPawnMoves(place: i32, slot: i32): void {
  const side = sideAt(slot);
  const from = squareAt(slot);
  const ahead = side == 0 ? from + 8 : from - 8;
  if ((occupied & ((<u64>1) << ahead)) == 0) {
    if (ahead >> 3 == 0 || ahead >> 3 == 7) leaveAll(slot, ahead, -1);
    else {
      keep(place, slot, ahead);
      const far = side == 0 ? ahead + 8 : ahead - 8;
      if (from >> 3 == (side == 0 ? 1 : 6) && (occupied & ((<u64>1) << far)) == 0) {
        keep(place, slot, doubleStepTarget(side, far));
      }
    }
  }
  for (let other = 1; other < men - 1; other++) {
    const square = squareAt(other);
    if (sideAt(other) == side || !isCoded(other, square)) continue;
    const passed = trueSquare(other, square) + (side == 0 ? 8 : -8);
    if ((attackSet(PAWN, side, from, occupied) & ((<u64>1) << passed)) != 0) leave(slot, passed, PAWN, other);
  }
}

function countMoves(place: i32, turn: i32): void {
  const inside = settled(place);
  for (let slot = 0; slot < men; slot++) {
    if (sideAt(slot) != turn) continue;
    const targets = attackSet(kindAt(slot), turn, squareAt(slot), occupied);
    if (kindAt(slot) == PAWN) countPawnMoves(inside, slot);
    else {
      for (let rest = targets & ~occupied; rest != 0; rest &= rest - 1) {
        keep(inside, slot, <i32>ctz(rest));
      }
    }
    for (let other = 1; other < men - 1; other++) {
      if (sideAt(other) == turn) continue;
      const square = trueSquare(other, squareAt(other));
      if ((targets & ((<u64>1) << square)) != 0) leaveAll(slot, square, other);
    }
  }
}

/** Second pass over some places: counts moves, looks up captures and promotions, finds the mates. */
export function countAll(from: i32, to: i32): void {
  for (let place = from; place < to; place++) {
    readBoard(place);
    for (let turn = 0; turn < 2; turn++) {
      const at = turn * places + place;
      if (load<u8>(value + at) == ILLEGAL) continue;
      outcome = 0;
      keeping = 0;
      leaving = 0;
      countMoves(place, turn);
      if (keeping + leaving == 0) {
        if (attacked(kingOf(turn), 1 - turn)) store<u8>(value + at, <u8>LOST);
        continue;
      }
      store<u8>(outside + at, <u8>outcome);
      if (outcome != 0 && outcome != DRAWN_OUTSIDE) farthest = max(farthest, outcome & 127);
      const lasts = outcome != 0 && outcome <= DRAWN_OUTSIDE;
      store<u8>(left + at, <u8>(lasts ? 255 : keeping + (outcome >= LOST ? 1 : 0)));
    }
  }
}

let found: i32 = 0;

/** One predecessor, with the other side to move, of a position won or lost in `distance`. */
function reach(at: i32, distance: i32, wins: bool): void {
  if (load<u8>(value + at) != 0) return;
  if (wins) {
    store<u8>(value + at, <u8>distance);
    found++;
  } else loseOne(at, distance);
}

function loseOne(at: i32, distance: i32): void {
  const rest = load<u8>(left + at);
  if (rest == 0) return;
  store<u8>(left + at, rest - 1);
  if (rest == 1) {
    store<u8>(value + at, <u8>(LOST + distance));
    found++;
  }
}

/** A predecessor in which the side now to move might just have made a double step is a second one. */
function reachBoth(place: i32, turn: i32, distance: i32, wins: bool): void {
  reach(turn * places + place, distance, wins);
  if (!hasEnPassant) return;
  for (let slot = 1; slot < men - 1; slot++) {
    if (kindAt(slot) != PAWN || sideAt(slot) == turn) continue;
    const square = squareAt(slot);
    if (square >> 3 != (sideAt(slot) == 0 ? 3 : 4)) continue;
    const inner = (place >> ((men - 1 - slot) * 6)) & 63;
    const coded = placeAfter(place, slot, sideAt(slot) == 0 ? inner - 24 : inner + 24);
    reach(turn * places + coded, distance, wins);
  }
}

function unmovePawn(place: i32, slot: i32, distance: i32, wins: bool): void {
  const side = sideAt(slot);
  const stored = squareAt(slot);
  const square = trueSquare(slot, stored);
  const back = side == 0 ? square - 8 : square + 8;
  const farBack = side == 0 ? square - 16 : square + 16;
  if (back >> 3 == 0 || back >> 3 == 7 || (occupied & ((<u64>1) << back)) != 0) return;
  if (stored == square) reachBoth(placeAfter(place, slot, back), side, distance, wins);
  if (square >> 3 != (side == 0 ? 3 : 4) || (occupied & ((<u64>1) << farBack)) != 0) return;
  if (doubleStepTarget(side, square) == stored) {
    reachBoth(placeAfter(place, slot, farBack), side, distance, wins);
  }
}

/** Walks back from one position with `turn` to move to all positions that can lead there. */
function unmoveAll(place: i32, turn: i32, distance: i32, wins: bool): void {
  readBoard(place);
  const mover = 1 - turn;
  for (let slot = 1; slot < men - 1; slot++) {
    const square = squareAt(slot);
    if (sideAt(slot) != mover || !isCoded(slot, square)) continue;
    unmovePawn(place, slot, distance, wins);
    return;
  }
  for (let slot = 0; slot < men; slot++) {
    if (sideAt(slot) != mover) continue;
    if (kindAt(slot) == PAWN) {
      unmovePawn(place, slot, distance, wins);
      continue;
    }
    let rest = attackSet(kindAt(slot), mover, squareAt(slot), occupied) & ~occupied;
    for (; rest != 0; rest &= rest - 1) {
      reachBoth(placeAfter(place, slot, <i32>ctz(rest)), mover, distance, wins);
    }
  }
}

// @ts-ignore: decorator
@inline
function holdsByte(word: u64, pattern: u64): bool {
  const same = word ^ pattern;
  return ((same - 0x0101010101010101) & ~same & 0x8080808080808080) != 0;
}

/** Gives positions the result that waits OUTSIDE for this distance. */
function takeOutside(wanted: i32, distance: i32): void {
  const pattern = <u64>wanted * 0x0101010101010101;
  for (let at = 0; at < 2 * places; at += 8) {
    if (!holdsByte(load<u64>(outside + at), pattern)) continue;
    for (let i = at; i < at + 8; i++) {
      if (load<u8>(outside + i) != wanted || load<u8>(value + i) != 0) continue;
      if (wanted >= LOST) loseOne(i, distance);
      else {
        store<u8>(value + i, <u8>distance);
        found++;
      }
    }
  }
}

function spread(from: i32, distance: i32, wins: bool): void {
  const pattern = <u64>from * 0x0101010101010101;
  for (let at = 0; at < 2 * places; at += 8) {
    if (!holdsByte(load<u64>(value + at), pattern)) continue;
    for (let i = at; i < at + 8; i++) {
      if (load<u8>(value + i) != from) continue;
      const turn = i >= places ? 1 : 0;
      unmoveAll(i - turn * places, turn, distance, wins);
    }
  }
}

/**
 * One step: finds every position won in `distance` moves, then every one lost in as many.
 * Returns how many it found, or -1 where neither this nor any later step can find more.
 */
export function step(distance: i32): i32 {
  found = 0;
  spread(LOST + distance - 1, distance, true);
  takeOutside(distance, distance);
  spread(distance, distance, false);
  takeOutside(LOST + distance, distance);
  return found == 0 && distance >= farthest ? -1 : found;
}
