// Looks a placement up in finished tables, whatever the colours: the tables of captures and
// promotions while a larger one is built, and the tables a search may use.
//
// A table is known by its signature: three bits a kind and side counting the men between the kings.
// One stored for White's stronger side answers for Black's too, by turning the board (square ^ 56).

import { PAWN, KING } from './attack-sets';
import { mirrorFor } from './layout';

/** A value byte: 0 drawn, 1 to 126 won in so many moves, 128 + n lost in n moves, 255 no legal position. */
export const ILLEGAL: i32 = 255;
export const LOST: i32 = 128;

const MOST_TABLES: i32 = 40;
/** A row a table: signature, code, where its bytes begin, places a side. */
const ROWS: usize = memory.data(40 * 16, 8);
let rows: i32 = 0;

/** The men of the placement to look up: kind, side, square as i32 triples; kings included. */
export const ASKED: usize = memory.data(6 * 12, 8);

function signatureBit(kind: i32, side: i32): i32 {
  return kind == KING ? 0 : 1 << ((kind - 1) * 3 + side * 15);
}

function signatureOf(code: i32): i32 {
  let signature = 0;
  while (code != 0) {
    signature += signatureBit(code & 7, (code >> 3) & 1);
    code >>>= 8;
  }
  return signature;
}

/** Forgets every table. */
export function forgetTables(): void {
  rows = 0;
}

/** Makes a table known whose values (White to move first) begin at `start`; false where there is no room. */
export function registerTable(code: i32, start: usize, places: i32): bool {
  if (rows == MOST_TABLES) return false;
  const row = ROWS + (rows << 4);
  store<i32>(row, signatureOf(code));
  store<i32>(row + 4, code);
  store<i32>(row + 8, <i32>start);
  store<i32>(row + 12, places);
  rows++;
  return true;
}

/** Writes a man into the question. */
// @ts-ignore: decorator
@inline
export function ask(at: i32, kind: i32, side: i32, square: i32): void {
  const man = ASKED + at * 12;
  store<i32>(man, kind);
  store<i32>(man + 4, side);
  store<i32>(man + 8, square);
}

function kingSquare(count: i32, side: i32): i32 {
  for (let i = 0; i < count; i++) {
    const man = ASKED + i * 12;
    if (load<i32>(man) == KING && load<i32>(man + 4) == side) return load<i32>(man + 8);
  }
  return 0;
}

function kingsTouch(count: i32): bool {
  const a = kingSquare(count, 0);
  const b = kingSquare(count, 1);
  return abs((a & 7) - (b & 7)) <= 1 && abs((a >> 3) - (b >> 3)) <= 1;
}

/** The value byte of the placement in ASKED with `turn` to move; -1 where no table is known for it. */
export function lookUp(count: i32, turn: i32): i32 {
  if (count == 2) return kingsTouch(count) ? ILLEGAL : 0;
  let signature = 0;
  let turned = 0;
  for (let i = 0; i < count; i++) {
    const man = ASKED + i * 12;
    signature += signatureBit(load<i32>(man), load<i32>(man + 4));
    turned += signatureBit(load<i32>(man), load<i32>(man + 4) ^ 1);
  }
  for (let i = 0; i < rows; i++) {
    const row = ROWS + (i << 4);
    const known = load<i32>(row);
    if (known == signature) return valueIn(row, count, turn, 0);
    if (known == turned) return valueIn(row, count, turn, 1);
  }
  return -1;
}

function valueIn(row: usize, count: i32, turn: i32, swap: i32): i32 {
  let code = load<i32>(row + 4);
  const flip = swap * 56;
  let withPawns = false;
  for (let rest = code; rest != 0; rest >>>= 8) withPawns = withPawns || (rest & 7) == PAWN;
  const white = kingSquare(count, swap) ^ flip;
  const mirror = mirrorFor(white, withPawns);
  const home = white ^ mirror;
  let place = (home & 3) | ((home >> 3) << 2);
  let used = 0;
  while (code != 0) {
    for (let i = 0; i < count; i++) {
      const man = ASKED + i * 12;
      if ((used & (1 << i)) != 0 || load<i32>(man) != (code & 7)) continue;
      if ((load<i32>(man + 4) ^ swap) != ((code >> 3) & 1)) continue;
      used |= 1 << i;
      place = (place << 6) | (load<i32>(man + 8) ^ flip ^ mirror);
      break;
    }
    code >>>= 8;
  }
  place = (place << 6) | (kingSquare(count, swap ^ 1) ^ flip ^ mirror);
  return load<u8>(<usize>load<i32>(row + 8) + (turn == swap ? 0 : load<i32>(row + 12)) + place);
}
