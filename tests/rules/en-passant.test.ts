import { expect, test } from 'vitest';
import { enPassantCapturers, passedPawnSquare } from '#lib/rules/en-passant.ts';
import { squareName } from '#lib/rules/position.ts';
import { afterMoves, positionOf, START_FEN } from '../support/positions.ts';

test.each([
  ['from both sides', '4k3/8/8/2PpP3/8/8/8/4K3 w - d6 0 2', ['c5', 'e5']],
  ['for Black', '4k3/8/8/8/3Pp3/8/8/4K3 b - d3 0 1', ['e4']],
  ['not from the edge round the board', '4k3/8/8/p6P/8/8/8/4K3 w - a6 0 2', []],
  ['not where both pawns uncover a rook on their rank', '8/8/8/K2pP2r/8/8/8/7k w - d6 0 1', []],
  ['not where the pawn is pinned on a file', '4r2k/8/8/3pP3/8/8/8/4K3 w - d6 0 1', []],
  ['not where the pawn is pinned on the other diagonal', '7k/6b1/8/3pP3/8/2K5/8/8 w - d6 0 1', []],
  ['where it takes the pawn that gives check', '8/8/8/3pP3/4K3/8/8/7k w - d6 0 1', ['e5']],
  ['where it steps between', '4k3/8/8/2KpP2r/8/8/8/8 w - d6 0 1', []],
  ['no square, no capture', '4k3/8/8/3pP3/8/8/8/4K3 w - - 0 2', []],
])('who may take en passant: %s', (_what, fen, expected) => {
  expect(enPassantCapturers(positionOf(fen)).map(squareName)).toEqual(expected);
});

test('a pawn pinned along the capturing diagonal may take en passant', () => {
  const position = positionOf('8/8/1B6/8/3pP3/8/5k2/7K b - e3 0 1');
  expect(enPassantCapturers(position).map(squareName)).toEqual(['d4']);
});

test('the pawn taken stands behind the square passed over', () => {
  expect(squareName(passedPawnSquare(afterMoves(START_FEN, ['e2e4'])))).toBe('e4');
  expect(squareName(passedPawnSquare(afterMoves(START_FEN, ['e2e4', 'd7d5'])))).toBe('d5');
});
