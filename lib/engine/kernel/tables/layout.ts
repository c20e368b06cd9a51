// How a placement of three or four men becomes a place in a table, and which men a table holds.
//
// Slot 0 is the white king, the last slot the black king, the others stand between in the order of
// the material's name. The white king is brought to files a to d by a mirror, and without pawns to
// ranks 1 to 4 by a second one; both are one exclusive-or over all squares and have no fixed points,
// so every placement has exactly one place. A pawn that has just made a double step beside an enemy
// pawn (en passant possible) stands on its own first rank instead, where no pawn can stand.

import { PAWN, KING } from './attack-sets';

/** Number of men of the current table. */
export let men: i32 = 0;
/** Does the current table hold a pawn: then only the file mirror applies. */
export let hasPawns: bool = false;
/** Pawns on both sides: en passant can occur. */
export let hasEnPassant: bool = false;
/** Places a side to move. */
export let places: i32 = 0;

const KIND: usize = memory.data(4 * 4, 8);
const SIDE: usize = memory.data(4 * 4, 8);
/** Squares of the placement at hand, by slot, as stored (en passant code not undone). */
export const SQUARE: usize = memory.data(4 * 4, 8);

// @ts-ignore: decorator
@inline
export function kindAt(slot: i32): i32 {
  return load<i32>(KIND + (slot << 2));
}

// @ts-ignore: decorator
@inline
export function sideAt(slot: i32): i32 {
  return load<i32>(SIDE + (slot << 2));
}

// @ts-ignore: decorator
@inline
export function squareAt(slot: i32): i32 {
  return load<i32>(SQUARE + (slot << 2));
}

/** Shift of a slot's six bits within a place; the last slot lies lowest. */
// @ts-ignore: decorator
@inline
export function shiftOf(slot: i32): i32 {
  return (men - 1 - slot) * 6;
}

/** Sets the material: `code` holds kind + 8 * side of the men between the kings, a byte each, first man lowest. */
export function setMaterial(code: i32): void {
  men = 1;
  store<i32>(KIND, KING);
  store<i32>(SIDE, 0);
  let pawnSides = 0;
  while (code != 0) {
    const man = code & 255;
    store<i32>(KIND + (men << 2), man & 7);
    store<i32>(SIDE + (men << 2), man >> 3);
    if ((man & 7) == PAWN) pawnSides |= 1 << (man >> 3);
    men++;
    code >>>= 8;
  }
  store<i32>(KIND + (men << 2), KING);
  store<i32>(SIDE + (men << 2), 1);
  men++;
  hasPawns = pawnSides != 0;
  hasEnPassant = pawnSides == 3;
  places = (hasPawns ? 32 : 16) << ((men - 1) * 6);
}

// @ts-ignore: decorator
@inline
function packKing(square: i32): i32 {
  return (square & 3) | ((square >> 3) << 2);
}

/** The mirror that brings a white king on `square` home, as a six-bit exclusive-or. */
// @ts-ignore: decorator
@inline
export function mirrorFor(square: i32, withPawns: bool): i32 {
  return ((square & 4) != 0 ? 7 : 0) | (!withPawns && (square & 32) != 0 ? 56 : 0);
}

/** The place reached when the man in `slot` goes to `to` from the (canonical) place `place`. */
// @ts-ignore: decorator
@inline
export function placeAfter(place: i32, slot: i32, to: i32): i32 {
  if (slot != 0) {
    const shift = shiftOf(slot);
    return (place & ~(63 << shift)) | (to << shift);
  }
  const mirror = mirrorFor(to, hasPawns);
  const bits = (men - 1) * 6;
  const low = (place & ((1 << bits) - 1)) ^ (men == 4 ? mirror * 0x1041 : mirror * 0x41);
  return (packKing(to ^ mirror) << bits) | low;
}

/** Unpacks a place into SQUARE. */
// @ts-ignore: decorator
@inline
export function unpack(place: i32): void {
  const king = place >> ((men - 1) * 6);
  store<i32>(SQUARE, (king & 3) | ((king >> 2) << 3));
  for (let slot = 1; slot < men; slot++) {
    store<i32>(SQUARE + (slot << 2), (place >> shiftOf(slot)) & 63);
  }
}

/** Is the pawn in `slot` stored with the en passant code? */
// @ts-ignore: decorator
@inline
export function isCoded(slot: i32, square: i32): bool {
  return hasEnPassant && kindAt(slot) == PAWN && square >> 3 == (sideAt(slot) == 0 ? 0 : 7);
}

/** Where a stored man really stands. */
// @ts-ignore: decorator
@inline
export function trueSquare(slot: i32, square: i32): i32 {
  return isCoded(slot, square) ? (sideAt(slot) == 0 ? square + 24 : square - 24) : square;
}
