import { describe, expect, test } from 'vitest';
import { attackersOf, isAttacked, isAttackedOn, isCheck, kingSquare } from '#lib/rules/attacks.ts';
import { type Side, squareName } from '#lib/rules/position.ts';
import { positionOf } from '../support/positions.ts';

function attackedBy(fen: string, side: Side): string[] {
  const position = positionOf(fen);
  const squares = Array.from({ length: 64 }, (_, square) => square);
  return squares.filter((square) => isAttacked(position, square, side)).map(squareName);
}

describe('which squares a side attacks (Laws 3.2 to 3.8)', () => {
  test.each([
    [
      'a knight in the corner',
      '4k3/8/8/8/8/8/4K3/n7 w - - 0 1',
      'b',
      ['c2', 'b3', 'd7', 'e7', 'f7', 'd8', 'f8'],
    ],
    [
      'pawns attack forward and aslant only',
      '8/8/3k4/8/p6p/8/8/4K3 w - - 0 1',
      'b',
      ['b3', 'g3', 'c5', 'd5', 'e5', 'c6', 'e6', 'c7', 'd7', 'e7'],
    ],
    [
      'a rook stops at the first man, own or not',
      'k7/8/8/8/1p1R1P2/8/8/3K4 w - - 0 1',
      'w',
      ['c1', 'd1', 'e1', 'c2', 'd2', 'e2', 'd3', 'b4', 'c4', 'e4', 'f4', 'd5', 'e5', 'g5', 'd6', 'd7', 'd8'],
    ],
  ] as [string, string, Side, string[]][])('%s', (_what, fen, side, squares) => {
    expect(attackedBy(fen, side)).toEqual(squares);
  });

  test('a pinned man attacks all the same (Laws 3.1.3)', () => {
    const position = positionOf('4r2k/8/8/8/4N3/8/8/4K3 w - - 0 1');
    expect(isAttacked(position, 45, 'w')).toBe(true);
  });
});

test.each([
  ['a rook', '4k3/8/8/8/8/8/8/4R1K1 b - - 0 1', true],
  ['a rook behind a pawn', '4k3/8/8/8/4p3/8/8/4R1K1 b - - 0 1', false],
  ['a pawn of the other side, seen from below', '8/8/8/8/4k3/3P4/8/6K1 b - - 0 1', true],
  ['a pawn that has gone past', '8/8/3P4/8/4k3/8/8/6K1 b - - 0 1', false],
  ['a knight', '4k3/8/3N4/8/8/8/8/6K1 b - - 0 1', true],
])('check by %s: %s', (_by, fen, expected) => {
  expect(isCheck(positionOf(fen))).toBe(expected);
});

test('all attackers of a square are found, and the king can be seen through', () => {
  const { board } = positionOf('4k3/8/3N4/8/8/8/7B/K3R3 b - - 0 1');
  expect(attackersOf(board, kingSquare(board, 'b'), 0).map(squareName).sort()).toEqual(['d6', 'e1']);
  const ray = positionOf('8/8/8/8/R3k3/8/8/4K3 b - - 0 1');
  expect(isAttackedOn(ray.board, 29, 0, -1)).toBe(false);
  expect(isAttackedOn(ray.board, 29, 0, kingSquare(ray.board, 'b'))).toBe(true);
});
