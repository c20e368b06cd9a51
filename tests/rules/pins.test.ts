import { expect, test } from 'vitest';
import { kingSquare } from '#lib/rules/attacks.ts';
import { pinsOf } from '#lib/rules/pins.ts';
import { squareName } from '#lib/rules/position.ts';
import { positionOf } from '../support/positions.ts';

test.each([
  ['by rook, bishop and queen', '4r2k/8/8/q7/7b/4B3/3P1N2/4K3 w - - 0 1', ['d2', 'e3', 'f2']],
  ['two shields are no pin', '4r2k/8/8/4P3/4P3/8/8/4K3 w - - 0 1', []],
  ['a man of the other side is no shield', '4r2k/8/8/4p3/8/8/8/4K3 w - - 0 1', []],
  ['a bishop does not pin on a file', '4b2k/8/8/8/4P3/8/8/4K3 w - - 0 1', []],
  ['a knight never pins', '4n2k/8/8/8/4P3/8/8/4K3 w - - 0 1', []],
])('pins: %s', (_what, fen, squares) => {
  const { board, turn } = positionOf(fen);
  const pins = pinsOf(board, kingSquare(board, turn), turn);
  expect(pins.map(({ square }) => squareName(square)).sort()).toEqual(squares);
});
