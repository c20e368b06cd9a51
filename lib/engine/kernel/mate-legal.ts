// May this move be played here? For replies that refuted elsewhere: trying one costs far less than
// listing all replies. Says no to castling and en passant, which the full list then has.

import { bit, kingAttacks, knightAttacks, pawnAttacks } from './bitboards';
import { DOUBLE_PUSH, SPECIAL } from './layout';
import { bishopAttacks, rookAttacks } from './magics';
import { kingSquare, manOn, men, occupied, sideToMove } from './position';

function isPawnMove(move: u32, us: u32, from: u32, to: u32, occ: u64): bool {
  const isLast = to < 8 || to >= 56;
  if (isLast != (((move >> 12) & 7) != 0)) return false;
  if (pawnAttacks(us, from) & bit(to)) return (occ & bit(to)) != 0;
  const up: u32 = us ? from - 8 : from + 8;
  if (occ & bit(up)) return false;
  if (to == up) return (move & SPECIAL) == 0;
  return (move & SPECIAL) == DOUBLE_PUSH && to == (us ? up - 8 : up + 8) && !(occ & bit(to));
}

function reaches(kind: u32, from: u32, to: u32, occ: u64): bool {
  if (kind == 2) return (knightAttacks(from) & bit(to)) != 0;
  if (kind == 6) return (kingAttacks(from) & bit(to)) != 0;
  let attacks: u64 = 0;
  if (kind != 3) attacks = rookAttacks(from, occ);
  if (kind != 4) attacks |= bishopAttacks(from, occ);
  return (attacks & bit(to)) != 0;
}

/**
 * Is `move`, legal in some other position, a legal move of the side to move here? It must have been
 * a move of the same side. False for castling and en passant, legal or not.
 */
export function isPlayable(move: u32): bool {
  const from = move & 63;
  const to = (move >> 6) & 63;
  const us = sideToMove();
  const man = manOn(from);
  if (man == 0 || (man & 8) != us || men(us) & bit(to)) return false;
  const special = move & SPECIAL;
  if (special && special != DOUBLE_PUSH) return false;
  const kind = man & 7;
  const occ = occupied();
  if (kind == 1) {
    if (!isPawnMove(move, us, from, to, occ)) return false;
  } else if (move >> 12 || !reaches(kind, from, to, occ)) return false;
  return !leavesKingAttacked(us, kind, from, to, occ);
}

function leavesKingAttacked(us: u32, kind: u32, from: u32, to: u32, occ: u64): bool {
  const them = us ^ 8;
  const after = (occ ^ bit(from)) | bit(to);
  const king = kind == 6 ? to : kingSquare(us);
  const others = ~bit(to);
  if (knightAttacks(king) & men(them + 2) & others) return true;
  if (pawnAttacks(us, king) & men(them + 1) & others) return true;
  if (kind == 6 && kingAttacks(king) & men(them + 6)) return true;
  return isAttackedBySliderBut(king, them, after, others);
}

// As isAttackedBySlider, a man taken on the way left out.
// @ts-ignore: decorator
@inline
function isAttackedBySliderBut(square: u32, by: u32, occ: u64, others: u64): bool {
  const rooks = (men(by + 4) | men(by + 5)) & others;
  if (rookAttacks(square, occ) & rooks) return true;
  const bishops = (men(by + 3) | men(by + 5)) & others;
  return (bishopAttacks(square, occ) & bishops) != 0;
}
