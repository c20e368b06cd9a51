// Does a move give check? Known from the board before the move is made.

import { between, bit, line, pawnAttacks, knightAttacks } from './bitboards';
import {
  BISHOP_EMPTY,
  CASTLE,
  CHECK_SQUARES,
  DISCOVERERS,
  EN_PASSANT,
  GIVES_CHECK,
  ROOK_EMPTY,
  SPECIAL,
} from './layout';
import { bishopAttacks, rookAttacks } from './magics';
import { bishopsAndQueens, kingSquare, manOn, men, occupied, rooksAndQueens, sideToMove } from './position';

/** Fills CHECK_SQUARES and DISCOVERERS for the side to move. */
// @ts-ignore: decorator
@inline
export function prepareChecks(): void {
  const us = sideToMove();
  const king = kingSquare(us ^ 8);
  const occ = occupied();
  const rook = rookAttacks(king, occ);
  const bishop = bishopAttacks(king, occ);
  store<u64>(CHECK_SQUARES + 8, pawnAttacks(us ^ 8, king));
  store<u64>(CHECK_SQUARES + 16, knightAttacks(king));
  store<u64>(CHECK_SQUARES + 24, bishop);
  store<u64>(CHECK_SQUARES + 32, rook);
  store<u64>(CHECK_SQUARES + 40, rook | bishop);
  store<u64>(CHECK_SQUARES + 48, 0);
  let snipers =
    (load<u64>(((<usize>king) << 3) + ROOK_EMPTY) & rooksAndQueens(us)) |
    (load<u64>(((<usize>king) << 3) + BISHOP_EMPTY) & bishopsAndQueens(us));
  const own = men(us);
  let discoverers: u64 = 0;
  while (snipers) {
    const blockers = between(king, <u32>ctz(snipers)) & occ;
    snipers &= snipers - 1;
    if (!(blockers & (blockers - 1))) discoverers |= blockers & own;
  }
  store<u64>(DISCOVERERS, discoverers);
}

// Do the sliders of `us` attack `king` on a board with these men?
function isHitBySliders(king: u32, us: u32, occ: u64): bool {
  return (
    (rookAttacks(king, occ) & rooksAndQueens(us) & occ) != 0 || (bishopAttacks(king, occ) & bishopsAndQueens(us) & occ) != 0
  );
}

// Promotions, castling and en passant change more than one line.
function specialGivesCheck(move: u32, from: u32, to: u32, king: u32): bool {
  const us = sideToMove();
  const occ = occupied();
  const promoted = (move >> 12) & 7;
  if (promoted) {
    const after = (occ ^ bit(from)) | bit(to);
    let hits: u64 = 0;
    if (promoted == 2) hits = knightAttacks(to);
    if (promoted == 3 || promoted == 5) hits |= bishopAttacks(to, after);
    if (promoted == 4 || promoted == 5) hits |= rookAttacks(to, after);
    return (hits & bit(king)) != 0;
  }
  if ((move & SPECIAL) == EN_PASSANT) {
    return isHitBySliders(king, us, (occ ^ bit(from) ^ bit(to ^ 8)) | bit(to));
  }
  if ((move & SPECIAL) == CASTLE) {
    const isShort = (to & 7) == 6;
    const rookFrom = isShort ? to + 1 : to - 2;
    const rookTo = isShort ? to - 1 : to + 1;
    const after = (occ ^ bit(from) ^ bit(rookFrom)) | bit(to) | bit(rookTo);
    return (rookAttacks(rookTo, after) & bit(king)) != 0;
  }
  return false;
}

/** Does this legal move give check? `prepareChecks` must have been called for this position. */
export function givesCheck(move: u32): bool {
  const from = move & 63;
  const to = (move >> 6) & 63;
  const kind = manOn(from) & 7;
  const king = kingSquare(sideToMove() ^ 8);
  if (!((move >> 12) & 7) && load<u64>(((<usize>kind) << 3) + CHECK_SQUARES) & bit(to)) return true;
  if (load<u64>(DISCOVERERS) & bit(from) && !(line(king, from) & bit(to))) return true;
  return move >> 12 ? specialGivesCheck(move, from, to, king) : false;
}

/** Sets GIVES_CHECK on every move of a list that gives check. */
export function markChecks(start: usize, end: usize): void {
  prepareChecks();
  for (let at = start; at < end; at += 4) {
    const move = load<u32>(at);
    if (givesCheck(move)) store<u32>(at, move | GIVES_CHECK);
  }
}
