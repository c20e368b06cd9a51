// Pawn structure: isolated, doubled, backward, supported and passed pawns. Depends on pawns alone, so
// each structure is valued once and kept.

import { bit, FILE_A, pawnSpan } from './bitboards';
import { men } from './position';
import { FILE_NEIGHBOURS, PASSED_MASK, PAWN_CACHE } from './search-layout';

/** Middle-game and ending value of the structure from White's side, and the passed pawns of both. */
export let structureMiddle: i32 = 0;
export let structureEnding: i32 = 0;
export let passedPawns: u64 = 0;

// @ts-ignore: decorator
@inline
function fileOf(square: u32): u64 {
  return FILE_A << (<u64>(square & 7));
}

function valueSide(us: u32, own: u64, their: u64): void {
  const sign = us ? -1 : 1;
  const supported = pawnSpan(us, own);
  const hit = pawnSpan(us ^ 8, their);
  let middle = 0;
  let ending = 0;
  let rest = own;
  while (rest) {
    const square = <u32>ctz(rest);
    rest &= rest - 1;
    const at = (<usize>square) << 3;
    const ahead = load<u64>(PASSED_MASK + at + (us ? 512 : 0));
    const behind = load<u64>(PASSED_MASK + at + (us ? 0 : 512));
    const beside = load<u64>(FILE_NEIGHBOURS + at);
    const front = ahead & fileOf(square);
    if ((ahead & their) == 0 && (front & own) == 0) passedPawns |= bit(square);
    if (front & own) {
      middle -= 8;
      ending -= 20;
    }
    if ((beside & own) == 0) {
      middle -= (front & their) == 0 ? 16 : 10;
      ending -= 14;
    } else if ((beside & behind & own) == 0 && bit(us ? square - 8 : square + 8) & hit) {
      middle -= 9;
      ending -= 8;
    }
    const rank = <i32>(us ? 7 - (square >> 3) : square >> 3);
    if (supported & bit(square)) {
      middle += 6 + rank * 2;
      ending += 4 + rank;
    } else if (beside & own & ((<u64>0xff) << (<u64>(square & 56)))) {
      middle += 4 + rank;
      ending += 3;
    }
  }
  structureMiddle += sign * middle;
  structureEnding += sign * ending;
}

/** Values the pawns on the board. */
export function valuePawns(): void {
  const white = men(1);
  const black = men(9);
  const key = (white * 0x9e3779b97f4a7c15) ^ (black * 0xc2b2ae3d27d4eb4f);
  const entry = PAWN_CACHE + ((<usize>(key >> 53)) << 5);
  if (load<u64>(entry) == white && load<u64>(entry, 8) == black) {
    passedPawns = load<u64>(entry, 16);
    structureMiddle = load<i32>(entry, 24);
    structureEnding = load<i32>(entry, 28);
    return;
  }
  structureMiddle = 0;
  structureEnding = 0;
  passedPawns = 0;
  valueSide(0, white, black);
  valueSide(8, black, white);
  store<u64>(entry, white);
  store<u64>(entry, black, 8);
  store<u64>(entry, passedPawns, 16);
  store<i32>(entry, structureMiddle, 24);
  store<i32>(entry, structureEnding, 28);
}
