// Endings that a sum of values misjudges: what cannot be won, what is hard to win, and how a bare king
// is driven to the edge. King and pawn against king is exact, from a table of bits.

import { FILE_A, FILE_H, kingAttacks } from './bitboards';
import { kingSquare, men, sideToMove } from './position';
import { KPK } from './search-layout';

const DARK: u64 = 0xaa55aa55aa55aa55;

// @ts-ignore: decorator
@inline
function steps(a: u32, b: u32): i32 {
  return max(abs(<i32>(a & 7) - <i32>(b & 7)), abs(<i32>(a >> 3) - <i32>(b >> 3)));
}

/** Is king and pawn against king won? `strong` is the side with the pawn. */
export function isPawnEndingWon(strong: u32): bool {
  const flip: u32 = strong ? 56 : 0;
  let king = kingSquare(strong) ^ flip;
  let pawn = <u32>ctz(men(strong + 1)) ^ flip;
  let other = kingSquare(strong ^ 8) ^ flip;
  if (king & 4) {
    king ^= 7;
    pawn ^= 7;
    other ^= 7;
  }
  const turn: u32 = sideToMove() == strong ? 0 : 1;
  const place = (turn << 17) | (((king & 3) | ((king >> 3) << 2)) << 12) | (pawn << 6) | other;
  return ((load<u8>(KPK + <usize>(place >> 3)) >> <u8>(place & 7)) & 1) != 0;
}

/** Bishop that does not control the corner of its rook's pawns, and the bare king near that corner. */
function isWrongBishop(strong: u32): bool {
  const pawns = men(strong + 1);
  if (men(strong + 2) | men(strong + 4) | men(strong + 5)) return false;
  if ((pawns & ~FILE_A) != 0 && (pawns & ~FILE_H) != 0) return false;
  const corner: u32 = (pawns & FILE_A ? 0 : 7) + (strong ? 0 : 56);
  const bishops = men(strong + 3);
  const cornerIsDark = (DARK >> <u64>corner) & 1;
  if (bishops & (cornerIsDark ? DARK : ~DARK)) return false;
  return steps(kingSquare(strong ^ 8), corner) <= 1;
}

/** What a bare or nearly bare king concedes by standing at the edge with the other king near. */
export function driveToEdge(strong: u32): i32 {
  const victim = kingSquare(strong ^ 8);
  const file = <i32>(victim & 7);
  const rank = <i32>(victim >> 3);
  const edge = 6 - min(file, 7 - file) - min(rank, 7 - rank);
  let value = edge * 14 + (7 - steps(victim, kingSquare(strong))) * 10;
  const bishops = men(strong + 3);
  if (bishops && men(strong + 2) && !(men(strong + 4) | men(strong + 5) | men(strong + 1))) {
    // Bishop and knight mate only in a corner of the bishop's colour.
    const dark = (bishops & DARK) != 0;
    const toCorner = dark ? min(steps(victim, 0), steps(victim, 63)) : min(steps(victim, 7), steps(victim, 56));
    value += (7 - toCorner) * 25;
  }
  return value;
}

// @ts-ignore: decorator
@inline
function pieces(side: u32): i32 {
  return <i32>(
    popcnt(men(side + 2)) * 3 + popcnt(men(side + 3)) * 3 + popcnt(men(side + 4)) * 5 + popcnt(men(side + 5)) * 9
  );
}

/** How much of an advantage of `strong` counts, in 64ths. */
export function winningShare(strong: u32): i32 {
  const weak = strong ^ 8;
  const pawns = <i32>popcnt(men(strong + 1));
  const ours = pieces(strong);
  const theirs = pieces(weak);
  if (pawns == 0) {
    if (ours <= 3) return 0;
    const knightsOnly = men(strong + 2) && !(men(strong + 3) | men(strong + 4) | men(strong + 5));
    if (ours == 6 && knightsOnly) return men(weak + 1) ? 6 : 0;
    if (ours - theirs <= 3) return 8;
  }
  if (pawns > 0 && theirs == 0 && ours <= 3 && isWrongBishop(strong)) return 2;
  const bishops = men(strong + 3);
  const others = men(weak + 3);
  const areOpposite =
    popcnt(bishops) == 1 && popcnt(others) == 1 && ((bishops & DARK) == 0) != ((others & DARK) == 0);
  if (areOpposite) {
    if (ours == 3 && theirs == 3) return pawns <= 2 ? 20 : 36;
    return 54;
  }
  if (pawns == 1 && ours - theirs <= 0) {
    // One pawn that a king or a minor man stops for good.
    const pawn = <u32>ctz(men(strong + 1));
    const ahead: u32 = strong ? pawn - 8 : pawn + 8;
    if (theirs > 0 && kingAttacks(kingSquare(weak)) & ((<u64>1) << <u64>ahead)) return 36;
    return 50;
  }
  return 64;
}
