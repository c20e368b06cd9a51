// Which moves are legal? Only legal moves are made: pins and checks are masks known beforehand.
// One generator in four modes, told apart by the width of a type so that the compiler makes four
// functions without a branch on the mode: u8 counts, u16 lists all, u32 lists captures and
// promotions, u64 lists moves that give check.

import {
  between,
  bit,
  FILE_A,
  FILE_H,
  kingAttacks,
  knightAttacks,
  knightSpan,
  line,
  pawnAttacks,
  pawnSpan,
  RANK_1,
  RANK_8,
} from './bitboards';
import { givesCheck, prepareChecks } from './checks';
import { BISHOP_EMPTY, CASTLE, CHECK_SQUARES, DISCOVERERS, DOUBLE_PUSH, EN_PASSANT, ROOK_EMPTY } from './layout';
import { bishopAttacks, rookAttacks } from './magics';
import {
  bishopsAndQueens,
  castlingRights,
  epSquare,
  isAttacked,
  isAttackedBySlider,
  kingSquare,
  men,
  rooksAndQueens,
  sideToMove,
} from './position';

const RANK_3: u64 = 0xff0000;
const RANK_6: u64 = 0xff0000000000;

// @ts-ignore: decorator
@inline
function emit<T>(ptr: usize, from: u32, targets: u64): usize {
  if (sizeof<T>() == 1) return ptr + <usize>popcnt(targets);
  while (targets) {
    store<u32>(ptr, from | ((<u32>ctz(targets)) << 6));
    ptr += 4;
    targets &= targets - 1;
  }
  return ptr;
}

// Pawn targets all moved by one distance; `back` leads from a target to its pawn.
// @ts-ignore: decorator
@inline
function emitPawns<T>(ptr: usize, targets: u64, back: u32, flag: u32): usize {
  if (sizeof<T>() == 1) return ptr + <usize>popcnt(targets);
  while (targets) {
    const to = <u32>ctz(targets);
    store<u32>(ptr, ((to + back) & 63) | (to << 6) | flag);
    ptr += 4;
    targets &= targets - 1;
  }
  return ptr;
}

// @ts-ignore: decorator
@inline
function emitPromotions<T>(ptr: usize, targets: u64, back: u32): usize {
  if (sizeof<T>() == 1) return ptr + ((<usize>popcnt(targets)) << 2);
  while (targets) {
    const to = <u32>ctz(targets);
    const move = ((to + back) & 63) | (to << 6);
    store<u32>(ptr, move | (5 << 12));
    store<u32>(ptr, move | (2 << 12), 4);
    store<u32>(ptr, move | (4 << 12), 8);
    store<u32>(ptr, move | (3 << 12), 12);
    ptr += 16;
    targets &= targets - 1;
  }
  return ptr;
}

/** Squares the king may step to: not his own men's, not attacked once he has left his square. */
export function kingTargets(us: u32, square: u32, own: u64, occ: u64): u64 {
  const them = us ^ 8;
  let targets = kingAttacks(square) & ~own;
  if (!targets) return 0;
  targets &= ~(pawnSpan(them, men(them + 1)) | knightSpan(men(them + 2)) | kingAttacks(kingSquare(them)));
  let rest = targets;
  const without = occ ^ bit(square);
  while (rest) {
    const to = <u32>ctz(rest);
    rest &= rest - 1;
    if (isAttackedBySlider(to, them, without)) targets ^= bit(to);
  }
  return targets;
}

function castleTargets(us: u32, occ: u64): u64 {
  const rights = castlingRights() >> (us ? 2 : 0);
  const shift: u64 = us ? 56 : 0;
  const base: u32 = us ? 56 : 0;
  const them = us ^ 8;
  let targets: u64 = 0;
  if (rights & 1 && !(occ & ((<u64>0x60) << shift))) {
    if (!isAttacked(base + 5, them, occ) && !isAttacked(base + 6, them, occ)) targets |= bit(base + 6);
  }
  if (rights & 2 && !(occ & ((<u64>0x0e) << shift))) {
    if (!isAttacked(base + 3, them, occ) && !isAttacked(base + 2, them, occ)) targets |= bit(base + 2);
  }
  return targets;
}

// In check mode a man's targets shrink to checking squares, or to all that leave an opened line.
// @ts-ignore: decorator
@inline
function checking<T>(targets: u64, from: u32, kind: u32, enemyKing: u32): u64 {
  if (sizeof<T>() != 8) return targets;
  let allowed = load<u64>(((<usize>kind) << 3) + CHECK_SQUARES);
  if (load<u64>(DISCOVERERS) & bit(from)) allowed |= ~line(enemyKing, from);
  return targets & allowed;
}

function enPassant<T>(ptr: usize, us: u32, king: u32, occ: u64): usize {
  const ep = epSquare();
  const them = us ^ 8;
  let takers = pawnAttacks(them, ep) & men(us + 1);
  while (takers) {
    const taker = takers & (0 - takers);
    takers ^= taker;
    if (isAttacked(king, them, (occ ^ taker ^ bit(ep ^ 8)) | bit(ep))) continue;
    if (sizeof<T>() == 1) ptr += 1;
    else {
      store<u32>(ptr, <u32>ctz(taker) | (ep << 6) | EN_PASSANT);
      ptr += 4;
    }
  }
  return ptr;
}

// A pinned pawn may take only along its line. Rare, so one by one.
function pinnedCaptures<T>(ptr: usize, us: u32, pawns: u64, king: u32, targets: u64): usize {
  while (pawns) {
    const from = <u32>ctz(pawns);
    pawns &= pawns - 1;
    const to = pawnAttacks(us, from) & targets & line(king, from);
    const back = from - <u32>ctz(to);
    if (!to) continue;
    if (to & (RANK_1 | RANK_8)) ptr = emitPromotions<T>(ptr, to, back);
    else ptr = emitPawns<T>(ptr, to, back, 0);
  }
  return ptr;
}

// Check mode: keeps of the moves from `start` on those that give check.
function keepChecks(start: usize, end: usize): usize {
  let kept = start;
  for (let at = start; at < end; at += 4) {
    const move = load<u32>(at);
    if (!givesCheck(move)) continue;
    store<u32>(kept, move);
    kept += 4;
  }
  return kept;
}

// @ts-ignore: decorator
@inline
function pawnMoves<T>(ptr: usize, us: u32, king: u32, pinned: u64, mask: u64, occ: u64, enemy: u64): usize {
  const start = ptr;
  const pawns = men(us + 1);
  if (!pawns) return ptr;
  const ends = RANK_1 | RANK_8;
  const free = pawns & ~pinned;
  // Left and right as White sees them; amounts for rotl, so that one code serves both sides.
  const up: u64 = us ? 56 : 8;
  const left: u64 = us ? 55 : 7;
  const right: u64 = us ? 57 : 9;
  const upMen = pinned & pawns ? free | (pinned & pawns & (FILE_A << (<u64>(king & 7)))) : free;
  const single = rotl<u64>(upMen, up) & ~occ;
  const double = rotl<u64>(single & (us ? RANK_6 : RANK_3), up) & ~occ & mask;
  const quiet = single & mask;
  const takesLeft = rotl<u64>(free & ~FILE_A, left) & enemy & mask;
  const takesRight = rotl<u64>(free & ~FILE_H, right) & enemy & mask;
  if ((takesLeft | takesRight | quiet) & ends) {
    ptr = emitPromotions<T>(ptr, takesLeft & ends, 64 - <u32>left);
    ptr = emitPromotions<T>(ptr, takesRight & ends, 64 - <u32>right);
    ptr = emitPromotions<T>(ptr, quiet & ends, 64 - <u32>up);
  }
  if (pinned & pawns) ptr = pinnedCaptures<T>(ptr, us, pinned & pawns, king, enemy & mask);
  if (epSquare() < 64) ptr = enPassant<T>(ptr, us, king, occ);
  if (sizeof<T>() == 8) {
    // Promotions, pinned men, en passant and opened lines are looked at singly.
    const opening = (load<u64>(DISCOVERERS) & pawns) != 0;
    if (ptr != start) ptr = keepChecks(start, ptr);
    const then = ptr;
    const direct = opening ? <u64>-1 : load<u64>(CHECK_SQUARES + 8);
    ptr = emitPawns<T>(ptr, takesLeft & ~ends & direct, 64 - <u32>left, 0);
    ptr = emitPawns<T>(ptr, takesRight & ~ends & direct, 64 - <u32>right, 0);
    ptr = emitPawns<T>(ptr, quiet & ~ends & direct, 64 - <u32>up, 0);
    ptr = emitPawns<T>(ptr, double & direct, 64 - <u32>(up << 1), DOUBLE_PUSH);
    return opening ? keepChecks(then, ptr) : ptr;
  }
  ptr = emitPawns<T>(ptr, takesLeft & ~ends, 64 - <u32>left, 0);
  ptr = emitPawns<T>(ptr, takesRight & ~ends, 64 - <u32>right, 0);
  if (sizeof<T>() == 4) return ptr;
  ptr = emitPawns<T>(ptr, quiet & ~ends, 64 - <u32>up, 0);
  return emitPawns<T>(ptr, double, 64 - <u32>(up << 1), DOUBLE_PUSH);
}

/**
 * Writes the legal moves of mode T at `ptr` (4 bytes each) and returns the address behind the last;
 * mode u8 writes nothing and returns `ptr` + their number.
 */
// @ts-ignore: decorator
@inline
export function generateMode<T>(ptr: usize): usize {
  const us = sideToMove();
  const them = us ^ 8;
  const own = men(us);
  const enemy = men(them);
  const occ = own | enemy;
  const king = kingSquare(us);
  const enemyKing: u32 = sizeof<T>() == 8 ? kingSquare(them) : 0;
  if (sizeof<T>() == 8) prepareChecks();

  let checkers = (knightAttacks(king) & men(them + 2)) | (pawnAttacks(us, king) & men(them + 1));
  let pinned: u64 = 0;
  let snipers =
    (load<u64>(((<usize>king) << 3) + ROOK_EMPTY) & rooksAndQueens(them)) |
    (load<u64>(((<usize>king) << 3) + BISHOP_EMPTY) & bishopsAndQueens(them));
  while (snipers) {
    const sniper = <u32>ctz(snipers);
    snipers &= snipers - 1;
    const blockers = between(king, sniper) & occ;
    if (!blockers) checkers |= bit(sniper);
    else if (!(blockers & (blockers - 1))) pinned |= blockers & own;
  }

  let kings: u64 = 0;
  if (sizeof<T>() == 8) {
    // The king itself gives no check; it may open a line.
    if (load<u64>(DISCOVERERS) & bit(king)) kings = kingTargets(us, king, own, occ) & ~line(enemyKing, king);
  } else kings = kingTargets(us, king, own, occ);
  if (sizeof<T>() == 4) kings &= enemy;
  ptr = emit<T>(ptr, king, kings);

  let mask: u64 = <u64>-1;
  if (checkers) {
    if (checkers & (checkers - 1)) return ptr;
    mask = checkers | between(king, <u32>ctz(checkers));
  } else if (sizeof<T>() != 4 && castlingRights() & (us ? 12 : 3)) {
    let castles = castleTargets(us, occ);
    if (sizeof<T>() == 1) ptr += <usize>popcnt(castles);
    else {
      const start = ptr;
      while (castles) {
        store<u32>(ptr, king | ((<u32>ctz(castles)) << 6) | CASTLE);
        ptr += 4;
        castles &= castles - 1;
      }
      if (sizeof<T>() == 8) ptr = keepChecks(start, ptr);
    }
  }

  ptr = pawnMoves<T>(ptr, us, king, pinned, mask, occ, enemy);
  const targets = sizeof<T>() == 4 ? mask & enemy : mask & ~own;

  let knights = men(us + 2) & ~pinned;
  while (knights) {
    const from = <u32>ctz(knights);
    knights &= knights - 1;
    ptr = emit<T>(ptr, from, checking<T>(knightAttacks(from) & targets, from, 2, enemyKing));
  }
  let bishops = men(us + 3);
  while (bishops) {
    const from = <u32>ctz(bishops);
    bishops &= bishops - 1;
    let to = bishopAttacks(from, occ) & targets;
    if (pinned & bit(from)) to &= line(king, from);
    ptr = emit<T>(ptr, from, checking<T>(to, from, 3, enemyKing));
  }
  let rooks = men(us + 4);
  while (rooks) {
    const from = <u32>ctz(rooks);
    rooks &= rooks - 1;
    let to = rookAttacks(from, occ) & targets;
    if (pinned & bit(from)) to &= line(king, from);
    ptr = emit<T>(ptr, from, checking<T>(to, from, 4, enemyKing));
  }
  let queens = men(us + 5);
  while (queens) {
    const from = <u32>ctz(queens);
    queens &= queens - 1;
    let to = (rookAttacks(from, occ) | bishopAttacks(from, occ)) & targets;
    if (pinned & bit(from)) to &= line(king, from);
    ptr = emit<T>(ptr, from, checking<T>(to, from, 5, enemyKing));
  }
  return ptr;
}

/** The number of legal moves. */
export function countMoves(): u32 {
  return <u32>generateMode<u8>(0);
}

/** All legal moves. */
export function generate(ptr: usize): usize {
  return generateMode<u16>(ptr);
}

/** Captures, en passant and promotions. */
export function generateNoisy(ptr: usize): usize {
  return generateMode<u32>(ptr);
}

/** All legal moves that give check. Leaves CHECK_SQUARES and DISCOVERERS filled. */
export function generateChecks(ptr: usize): usize {
  return generateMode<u64>(ptr);
}
