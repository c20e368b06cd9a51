// How does the position stand, in centipawns for the side to move? Values of the middle game and of
// the ending are mixed by the men left. Our own terms and numbers.

import { bit, FILE_A, kingAttacks, knightAttacks, pawnAttacks, pawnSpan } from './bitboards';
import { driveToEdge, isPawnEndingWon, winningShare } from './eval-endings';
import { passedPawns, structureEnding, structureMiddle, valuePawns } from './eval-pawns';
import { bishopAttacks, rookAttacks } from './magics';
import { kingSquare, men, occupied, positionKey, sideToMove } from './position';
import { EVAL_CACHE, PASSED_MASK, SQUARE_VALUES } from './search-layout';

let middle: i32 = 0;
let ending: i32 = 0;
let phase: i32 = 0;
/** Everything a side attacks; pawns first, then men, as the terms go on. */
let whiteSees: u64 = 0;
let blackSees: u64 = 0;
let pressure: i32 = 0;
let attackers: i32 = 0;

// @ts-ignore: decorator
@inline
function addSquares(man: u32, squares: u64): void {
  const values = SQUARE_VALUES + ((<usize>man) << 8);
  while (squares) {
    const at = values + ((<usize>ctz(squares)) << 2);
    squares &= squares - 1;
    middle += load<i16>(at);
    ending += load<i16>(at, 2);
  }
}

// @ts-ignore: decorator
@inline
function addMobility(kind: u32, sees: u64, safe: u64, sign: i32): void {
  const free = <i32>popcnt(sees & safe);
  if (kind == 2) {
    middle += sign * (free - 4) * 5;
    ending += sign * (free - 4) * 5;
  } else if (kind == 3) {
    middle += sign * (free - 6) * 5;
    ending += sign * (free - 6) * 5;
  } else if (kind == 4) {
    middle += sign * (free - 7) * 3;
    ending += sign * (free - 7) * 5;
  } else {
    middle += sign * (free - 13) * 2;
    ending += sign * (free - 13) * 3;
  }
}

// @ts-ignore: decorator
@inline
function addPressure(kind: u32, sees: u64, zone: u64): void {
  const hits = sees & zone;
  if (hits == 0) return;
  attackers++;
  const weight = kind == 5 ? 5 : kind == 4 ? 3 : 2;
  pressure += weight * min(<i32>popcnt(hits), 4) + weight;
}

/** Mobility, attack on the king and standing of one side's pieces. */
function addPieces(us: u32): void {
  const sign = us ? -1 : 1;
  const them = us ^ 8;
  const occ = occupied();
  const theirKing = kingSquare(them);
  const nearKing = kingAttacks(theirKing);
  const zone = nearKing | (us ? nearKing << 8 : nearKing >> 8);
  const guarded = pawnSpan(them, men(them + 1));
  const safe = ~(guarded | men(us + 1) | men(us + 6));
  const ownPawns = men(us + 1);
  let sees = pawnSpan(us, ownPawns) | kingAttacks(kingSquare(us));
  pressure = 0;
  attackers = 0;
  let checks = 0;
  const straight = rookAttacks(theirKing, occ);
  const slanting = bishopAttacks(theirKing, occ);
  const jump = knightAttacks(theirKing);
  const open = ~guarded & ~men(us) & ~kingAttacks(theirKing);
  for (let kind: u32 = 2; kind <= 5; kind++) {
    let rest = men(us + kind);
    while (rest) {
      const square = <u32>ctz(rest);
      rest &= rest - 1;
      let set: u64 = 0;
      if (kind == 2) set = knightAttacks(square);
      else {
        if (kind != 4) set |= bishopAttacks(square, occ ^ men(us + 5));
        if (kind != 3) set |= rookAttacks(square, occ ^ men(us + 4));
      }
      sees |= set;
      addMobility(kind, set, safe, sign);
      addPressure(kind, set, zone);
      if (kind == 2 && set & jump & open) checks += 2;
      if (kind != 4 && kind != 2 && set & slanting & open) checks += kind == 5 ? 3 : 1;
      if (kind >= 4 && set & straight & open) checks += kind == 5 ? 3 : 3;
      if (kind == 4) addRook(us, square, ownPawns, sign);
      if (kind <= 3) addOutpost(us, square, sign, kind);
    }
  }
  if (popcnt(men(us + 3)) >= 2) {
    middle += sign * 28;
    ending += sign * 48;
  }
  if (us) blackSees = sees;
  else whiteSees = sees;
  if (attackers == 0) return;
  if (men(us + 5) == 0) pressure >>= 1;
  if (attackers == 1) pressure >>= 1;
  pressure += checks;
  middle += sign * min((pressure * pressure) / 4, 600);
  ending += sign * min(pressure, 30);
}

function addRook(us: u32, square: u32, ownPawns: u64, sign: i32): void {
  const file = FILE_A << (<u64>(square & 7));
  if (file & ownPawns) return;
  const isOpen = (file & men((us ^ 8) + 1)) == 0;
  middle += sign * (isOpen ? 24 : 12);
  ending += sign * (isOpen ? 12 : 8);
}

/** A minor man that a pawn guards and no pawn can drive away. */
function addOutpost(us: u32, square: u32, sign: i32, kind: u32): void {
  const rank = <i32>(us ? 7 - (square >> 3) : square >> 3);
  if (rank < 3 || rank > 5 || (pawnAttacks(us ^ 8, square) & men(us + 1)) == 0) return;
  const file = FILE_A << (<u64>(square & 7));
  const ahead = load<u64>(PASSED_MASK + (us ? 512 : 0) + ((<usize>square) << 3)) & ~file;
  if (ahead & men((us ^ 8) + 1)) return;
  middle += sign * (kind == 2 ? 24 : 14);
  ending += sign * (kind == 2 ? 14 : 8);
}

/** Pawns before the king, and open files beside it. */
function addShelter(us: u32): void {
  const sign = us ? -1 : 1;
  const king = kingSquare(us);
  const pawns = men(us + 1);
  const file = <i32>(king & 7);
  let worth = 0;
  for (let at: i32 = max(file - 1, 0); at <= min(file + 1, 7); at++) {
    const column = FILE_A << (<u64>at);
    const ahead = load<u64>(PASSED_MASK + (us ? 512 : 0) + ((<usize>king) << 3)) & column;
    const shield = ahead & pawns;
    if (shield == 0) worth -= (column & men((us ^ 8) + 1)) == 0 ? 32 : 20;
    else {
      const nearest = us ? 63 - <i32>clz(shield) : <i32>ctz(shield);
      worth -= 7 * min(abs((nearest >> 3) - <i32>(king >> 3)) - 1, 3);
    }
  }
  middle += sign * worth;
}

/** Men that stand attacked: by a pawn, or by a lesser man, or undefended. */
function addThreats(us: u32): void {
  const sign = us ? -1 : 1;
  const them = us ^ 8;
  const byPawn = pawnSpan(us, men(us + 1));
  const sees = us ? blackSees : whiteSees;
  const theirs = us ? whiteSees : blackSees;
  const valuable = men(them + 2) | men(them + 3) | men(them + 4) | men(them + 5);
  const hitByPawn = <i32>popcnt(byPawn & valuable);
  const loose = <i32>popcnt(sees & ~theirs & valuable);
  const loosePawns = <i32>popcnt(sees & ~theirs & men(them + 1));
  middle += sign * (hitByPawn * 34 + loose * 22 + loosePawns * 6);
  ending += sign * (hitByPawn * 26 + loose * 20 + loosePawns * 10);
}

// @ts-ignore: decorator
@inline
function distance(a: u32, b: u32): i32 {
  return max(abs(<i32>(a & 7) - <i32>(b & 7)), abs(<i32>(a >> 3) - <i32>(b >> 3)));
}

function addPassed(us: u32): void {
  const sign = us ? -1 : 1;
  const them = us ^ 8;
  const king = kingSquare(us);
  const theirKing = kingSquare(them);
  const bare = (men(them) & ~men(them + 1) & ~men(them + 6)) == 0;
  let rest = passedPawns & men(us + 1);
  let best = 0;
  while (rest) {
    const square = <u32>ctz(rest);
    rest &= rest - 1;
    const rank = <i32>(us ? 7 - (square >> 3) : square >> 3);
    const next: u32 = us ? square - 8 : square + 8;
    const path = load<u64>(PASSED_MASK + (us ? 512 : 0) + ((<usize>square) << 3)) & (FILE_A << (<u64>(square & 7)));
    const urge = rank >= 3 ? (rank - 2) * (rank - 1) : 0;
    middle += sign * (rank * 4 + urge * 3);
    let worth = rank * 8 + urge * 7;
    worth += urge * (distance(theirKing, next) * 2 - distance(king, next)) / 2;
    if (path & occupied()) worth -= bit(next) & men(them) ? urge * 4 : urge;
    else if ((path & (us ? whiteSees : blackSees)) == 0) worth += urge * 4;
    ending += sign * worth;
    if (bare && best < 1000) {
      // The rule of the square, the king's own path left out of account.
      const goal: u32 = us ? square & 7 : 56 | (square & 7);
      const way = min(7 - rank, 5) - 0;
      const late = sideToMove() == us ? 0 : 1;
      if ((path & occupied()) == 0 && distance(theirKing, goal) - late > way) best = max(best, 560 + rank * 20);
    }
  }
  ending += sign * best;
}

function sumUp(): i32 {
  middle = 0;
  ending = 0;
  phase = 0;
  for (let kind: u32 = 1; kind <= 6; kind++) {
    addSquares(kind, men(kind));
    addSquares(kind + 8, men(kind + 8));
  }
  phase = <i32>(
    popcnt(men(2) | men(10) | men(3) | men(11)) + popcnt(men(4) | men(12)) * 2 + popcnt(men(5) | men(13)) * 4
  );
  valuePawns();
  middle += structureMiddle;
  ending += structureEnding;
  addPieces(0);
  addPieces(8);
  addShelter(0);
  addShelter(8);
  addThreats(0);
  addThreats(8);
  addPassed(0);
  addPassed(8);
  const weight = min(phase, 24);
  let value = (middle * weight + ending * (24 - weight)) / 24;
  const strong: u32 = value >= 0 ? 0 : 8;
  const weak = strong ^ 8;
  if ((men(weak) & ~men(weak + 6) & ~men(weak + 1)) == 0 && popcnt(men(weak + 1)) <= 1) {
    const push = driveToEdge(strong);
    if (men(strong + 4) | men(strong + 5) || popcnt(men(strong + 3) | men(strong + 2)) >= 2) {
      value += strong ? -push - 200 : push + 200;
    }
  }
  return (value * winningShare(strong)) / 64;
}

function countAll(): i32 {
  return <i32>popcnt(occupied());
}

function exactSmall(): i32 {
  const strong: u32 = men(1) ? 0 : 8;
  if (!isPawnEndingWon(strong)) return 0;
  const pawn = <u32>ctz(men(strong + 1));
  const rank = <i32>(strong ? 7 - (pawn >> 3) : pawn >> 3);
  const value = 700 + rank * 20 + driveToEdge(strong) / 8;
  return strong ? -value : value;
}

/** The value for the side to move; never used when in check at the edge of a search. */
export function evaluate(): i32 {
  const key = positionKey();
  const entry = EVAL_CACHE + ((<usize>(key & 16383)) << 3);
  const word = load<u64>(entry);
  if (word >> 16 == key >> 16 && word != 0) return <i32>(<i16>(word & 0xffff));
  const isKpk = countAll() == 3 && (men(1) | men(9)) != 0;
  const white = isKpk ? exactSmall() : sumUp();
  const value = (sideToMove() ? -white : white) + (isKpk || white == 0 ? 0 : 8);
  store<u64>(entry, (key & ~(<u64>0xffff)) | <u64>(value & 0xffff));
  return value;
}
