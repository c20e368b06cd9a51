// What does a capture win or lose when both sides go on taking on that square? Static exchange
// evaluation: the cheapest attacker takes first, men behind join in, pins are not looked at.

import { bit } from './bitboards';
import { EN_PASSANT, SPECIAL } from './layout';
import { bishopAttacks, rookAttacks } from './magics';
import { attackersTo, bishopsAndQueens, manOn, men, occupied, rooksAndQueens, sideToMove } from './position';

/** Exchange values by kind: pawn, knight, bishop, rook, queen, king. */
const WORTH: StaticArray<i32> = [0, 100, 325, 335, 500, 975, 20000, 0];

// @ts-ignore: decorator
@inline
export function worthOf(kind: u32): i32 {
  return unchecked(WORTH[kind & 7]);
}

/** Does the exchange that begins with this legal move bring the mover at least `wanted` centipawns? */
export function seeAtLeast(move: u32, wanted: i32): bool {
  const from = move & 63;
  const to = (move >> 6) & 63;
  const promoted = (move >> 12) & 7;
  const isPassing = (move & SPECIAL) == EN_PASSANT && promoted == 0;
  let balance = (isPassing ? 100 : worthOf(manOn(to))) - wanted;
  let next = worthOf(manOn(from));
  if (promoted) {
    balance += worthOf(promoted) - 100;
    next = worthOf(promoted);
  }
  if (balance < 0) return false;
  balance -= next;
  if (balance >= 0) return true;
  let occ = (occupied() ^ bit(from)) | bit(to);
  if (isPassing) occ ^= bit(to ^ 8);
  let attackers = attackersTo(to, occ) & occ;
  const straight = rooksAndQueens(0) | rooksAndQueens(8);
  const slanting = bishopsAndQueens(0) | bishopsAndQueens(8);
  let side = sideToMove() ^ 8;
  const mover = side ^ 8;
  for (;;) {
    const own = attackers & men(side);
    if (own == 0) break;
    let kind: u32 = 1;
    while (kind < 6 && (own & men(side + kind)) == 0) kind++;
    const chosen = own & men(side + kind);
    side ^= 8;
    balance = -balance - 1 - worthOf(kind);
    if (balance >= 0) {
      // A king may not take what is defended.
      if (kind == 6 && (attackers & men(side)) != 0) side ^= 8;
      break;
    }
    occ ^= chosen & (0 - chosen);
    if (kind == 1 || kind == 3 || kind == 5) attackers |= bishopAttacks(to, occ) & slanting;
    if (kind == 4 || kind == 5) attackers |= rookAttacks(to, occ) & straight;
    attackers &= occ;
  }
  return side != mover;
}
