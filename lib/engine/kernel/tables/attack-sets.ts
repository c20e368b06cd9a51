// Attack sets for boards of three and four men: step tables and eight rays a square, enough for
// retrograde analysis, where blockers are few and code size matters more than magic lookups.

const STEPS: usize = memory.data(64 * 8 * 2, 8);
const RAYS: usize = memory.data(64 * 8 * 8, 8);

export const PAWN: i32 = 1;
export const KNIGHT: i32 = 2;
export const BISHOP: i32 = 3;
export const ROOK: i32 = 4;
export const QUEEN: i32 = 5;
export const KING: i32 = 6;

const DX = memory.data<i8>([0, 1, 1, 1, 0, -1, -1, -1]);
const DY = memory.data<i8>([1, 1, 0, -1, -1, -1, 0, 1]);
const KX = memory.data<i8>([1, 2, 2, 1, -1, -2, -2, -1]);
const KY = memory.data<i8>([2, 1, -1, -2, -2, -1, 1, 2]);

function bitAt(file: i32, rank: i32): u64 {
  return file >= 0 && file < 8 && rank >= 0 && rank < 8 ? (<u64>1) << (rank * 8 + file) : 0;
}

/** Fills the step and ray tables; called once an instance. */
export function prepareAttackSets(): void {
  for (let square = 0; square < 64; square++) {
    const file = square & 7;
    const rank = square >> 3;
    let knight: u64 = 0;
    let king: u64 = 0;
    for (let d = 0; d < 8; d++) {
      knight |= bitAt(file + load<i8>(KX + d), rank + load<i8>(KY + d));
      const dx = load<i8>(DX + d);
      const dy = load<i8>(DY + d);
      king |= bitAt(file + dx, rank + dy);
      let ray: u64 = 0;
      for (let i = 1; i < 8; i++) ray |= bitAt(file + dx * i, rank + dy * i);
      store<u64>(RAYS + ((square * 8 + d) << 3), ray);
    }
    store<u64>(STEPS + (square << 4), knight);
    store<u64>(STEPS + (square << 4) + 8, king);
  }
}

// @ts-ignore: decorator
@inline
function rayOf(square: i32, direction: i32): u64 {
  return load<u64>(RAYS + ((square * 8 + direction) << 3));
}

/** Squares seen along a ray that runs to higher squares (directions 0, 1, 2, 7). */
// @ts-ignore: decorator
@inline
function upward(square: i32, direction: i32, occupied: u64): u64 {
  const ray = rayOf(square, direction);
  const blockers = ray & occupied;
  return blockers == 0 ? ray : ray ^ rayOf(<i32>ctz(blockers), direction);
}

/** Squares seen along a ray that runs to lower squares (directions 3, 4, 5, 6). */
// @ts-ignore: decorator
@inline
function downward(square: i32, direction: i32, occupied: u64): u64 {
  const ray = rayOf(square, direction);
  const blockers = ray & occupied;
  return blockers == 0 ? ray : ray ^ rayOf(63 - <i32>clz(blockers), direction);
}

function rookSet(square: i32, occupied: u64): u64 {
  return (
    upward(square, 0, occupied) |
    upward(square, 2, occupied) |
    downward(square, 4, occupied) |
    downward(square, 6, occupied)
  );
}

function bishopSet(square: i32, occupied: u64): u64 {
  return (
    upward(square, 1, occupied) |
    upward(square, 7, occupied) |
    downward(square, 3, occupied) |
    downward(square, 5, occupied)
  );
}

/** Squares next to `square` on its own rank: where a pawn stands that may take en passant. */
export function besides(square: i32): u64 {
  const bit = (<u64>1) << square;
  const file = square & 7;
  return (file > 0 ? bit >> 1 : 0) | (file < 7 ? bit << 1 : 0);
}

/** Squares that a pawn of `side` (0 White) on `square` attacks. */
export function pawnSet(side: i32, square: i32): u64 {
  const ahead = side == 0 ? square + 8 : square - 8;
  return ahead < 0 || ahead > 63 ? 0 : besides(ahead);
}

/** Squares that a man attacks; pawns by `side`. */
export function attackSet(kind: i32, side: i32, square: i32, occupied: u64): u64 {
  if (kind == KING) return load<u64>(STEPS + (square << 4) + 8);
  if (kind == KNIGHT) return load<u64>(STEPS + (square << 4));
  if (kind == PAWN) return pawnSet(side, square);
  let set: u64 = 0;
  if (kind != BISHOP) set |= rookSet(square, occupied);
  if (kind != ROOK) set |= bishopSet(square, occupied);
  return set;
}
