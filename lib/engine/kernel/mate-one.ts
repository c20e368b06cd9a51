// Is it mate, and is there a mate in one? The two questions asked most often, so they have code of
// their own: no move list of the defender is made, and the first way out ends the look.

import { between, bit, kingAttacks, knightAttacks, knightSpan, pawnAttacks, pawnSpan } from './bitboards';
import { generateChecks, kingTargets } from './generate';
import { BISHOP_EMPTY, DOUBLE_PUSH, ROOK_EMPTY, SPECIAL } from './layout';
import { bishopAttacks, rookAttacks } from './magics';
import { make, unmake } from './make';
import { countNode } from './poll';
import {
  bishopsAndQueens,
  epSquare,
  isAttackedBySlider,
  kingSquare,
  manOn,
  men,
  occupied,
  rooksAndQueens,
  sideToMove,
} from './position';

// Has the king of `us` a square to go to?
// @ts-ignore: decorator
@inline
function hasFlight(us: u32, king: u32, own: u64, occ: u64): bool {
  const them = us ^ 8;
  let targets =
    kingAttacks(king) &
    ~(own | pawnSpan(them, men(them + 1)) | knightSpan(men(them + 2)) | kingAttacks(kingSquare(them)));
  const without = occ ^ bit(king);
  while (targets) {
    if (!isAttackedBySlider(<u32>ctz(targets), them, without)) return true;
    targets &= targets - 1;
  }
  return false;
}

// Can a man other than the king, none of them pinned, go to one of `targets`? All but the last are empty.
function canReach(us: u32, targets: u64, checker: u64, movers: u64, occ: u64): bool {
  const pawns = men(us + 1) & movers;
  if (pawnSpan(us, pawns) & checker) return true;
  const empty = targets ^ checker;
  if (empty && pawns) {
    const single = (us ? pawns >> 8 : pawns << 8) & ~occ;
    const double = (us ? (single & 0xff0000000000) >> 8 : (single & 0xff0000) << 8) & ~occ;
    if ((single | double) & empty) return true;
  }
  const knights = men(us + 2) & movers;
  const rooks = rooksAndQueens(us) & movers;
  const bishops = bishopsAndQueens(us) & movers;
  if (knightSpan(knights) & targets) return true;
  while (targets) {
    const square = <u32>ctz(targets);
    targets &= targets - 1;
    if (load<u64>(((<usize>square) << 3) + ROOK_EMPTY) & rooks && rookAttacks(square, occ) & rooks) return true;
    if (load<u64>(((<usize>square) << 3) + BISHOP_EMPTY) & bishops && bishopAttacks(square, occ) & bishops) return true;
  }
  return false;
}

/** Is the side to move, which is known to be in check, mated? */
export function isMated(): bool {
  const us = sideToMove();
  const them = us ^ 8;
  const king = kingSquare(us);
  const own = men(us);
  const occ = own | men(them);
  if (hasFlight(us, king, own, occ)) return false;
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
    else if (!(blockers & (blockers - 1))) pinned |= blockers;
  }
  if (checkers & (checkers - 1)) return true;
  const targets = checkers | between(king, <u32>ctz(checkers));
  // A pinned man's line meets the line of the check in the king's square only: it cannot help.
  if (canReach(us, targets, checkers, own & ~pinned & ~bit(king), occ)) return false;
  return epSquare() == 64;
}

/**
 * The squares to which the king of the side not to move could go now: a mating move must take all of
 * them. Fixed for a position, so found once for all its moves.
 */
export function flightsNow(): u64 {
  const them = sideToMove() ^ 8;
  return kingTargets(them, kingSquare(them), men(them), occupied());
}

/**
 * Can this checking move, not yet made, be mate? False only where the king surely keeps a flight: one
 * that the man does not attack from its new square, while it opens no line by leaving the old one.
 */
// @ts-ignore: decorator
@inline
export function mayMate(move: u32, flights: u64): bool {
  if (!flights) return true;
  const from = move & 63;
  const to = (move >> 6) & 63;
  const us = sideToMove();
  const occ = occupied();
  let kind = manOn(from) & 7;
  if (move & SPECIAL && (move & SPECIAL) != DOUBLE_PUSH) return true;
  const promoted = (move >> 12) & 7;
  if (promoted) kind = promoted;
  const after = (occ ^ bit(from) ^ bit(kingSquare(us ^ 8))) | bit(to);
  let covered = bit(to);
  if (kind == 1) covered |= pawnAttacks(us, to);
  else if (kind == 2) covered |= knightAttacks(to);
  else if (kind == 6) covered |= kingAttacks(to);
  else {
    if (kind != 3) covered |= rookAttacks(to, after);
    if (kind != 4) covered |= bishopAttacks(to, after);
  }
  return !(flights & ~covered) || isAttackedBySlider(from, us, occ);
}

/** A move that mates at once, or 0. Looks at checking moves only. */
export function findMateInOne(ptr: usize): u32 {
  const end = generateChecks(ptr);
  if (end == ptr) return 0;
  const flights = flightsNow();
  for (let at = ptr; at < end; at += 4) {
    const move = load<u32>(at);
    if (!mayMate(move, flights)) continue;
    make(move);
    countNode();
    const isMate = isMated();
    unmake(move);
    if (isMate) return move;
  }
  return 0;
}
