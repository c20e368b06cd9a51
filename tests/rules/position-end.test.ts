import { expect, test } from 'vitest';
import { positionEnd } from '#lib/rules/position-end.ts';
import { positionOf } from '../support/positions.ts';

test.each([
  ['a back-rank mate', 'R5k1/5ppp/8/8/8/8/8/6K1 b - - 0 1', 'checkmate'],
  ['a smothered mate', '6rk/5Npp/8/8/8/8/8/6K1 b - - 0 1', 'checkmate'],
  ['en passant is the only answer to a check', '8/8/8/2k5/3Pp3/8/8/2R1K1B1 b - d3 0 1', null],
  ['stalemate in the corner', '7k/5Q2/8/8/8/8/8/6K1 b - - 0 1', 'stalemate'],
  ['stalemate with a blocked pawn', '7k/5Q2/8/p7/P7/8/8/6K1 b - - 0 1', 'stalemate'],
  ['stalemate comes before too few men', 'k7/8/K2B4/8/8/8/8/8 b - - 0 1', 'stalemate'],
  ['bare kings', '4k3/8/8/8/8/8/8/4K3 w - - 0 1', 'insufficient'],
  ['a bishop', '4k3/8/8/8/8/8/8/4KB2 w - - 0 1', 'insufficient'],
  ['a knight', '4k1n1/8/8/8/8/8/8/4K3 w - - 0 1', 'insufficient'],
  ['bishops on squares of one colour', '4kb2/8/8/8/8/8/8/2B1K3 w - - 0 1', 'insufficient'],
  ['bishops on both colours', '2b1k3/8/8/8/8/8/8/2B1K3 w - - 0 1', null],
  ['two knights', '4k3/8/8/8/8/8/8/1N2K1N1 w - - 0 1', null],
  ['knight against bishop', '4kb2/8/8/8/8/8/8/4K1N1 w - - 0 1', null],
  ['a pawn', '4k3/8/8/8/8/8/4P3/4K3 w - - 0 1', null],
])('[V3] %s', (_what, fen, end) => {
  expect(positionEnd(positionOf(fen))).toBe(end);
});
