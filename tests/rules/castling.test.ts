import { describe, expect, test } from 'vitest';
import { addCastlings, CASTLINGS, rightsAfter } from '#lib/rules/castling.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Move } from '#lib/rules/move.ts';
import { parseSquare } from '#lib/rules/position.ts';
import { positionOf } from '../support/positions.ts';

function castlings(fen: string): string[] {
  return legalMoves(positionOf(fen)).flatMap(({ castle }) => (castle === null ? [] : [castle]));
}

describe('castling (Laws 3.8.2)', () => {
  test.each([
    ['both ways', 'r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1', ['short', 'long']],
    ['for Black as well', 'r3k2r/8/8/8/8/8/8/R3K2R b KQkq - 0 1', ['short', 'long']],
    ['only with the right', 'r3k2r/8/8/8/8/8/8/R3K2R w Qkq - 0 1', ['long']],
    ['not out of check', '4k3/8/8/8/4r3/8/8/R3K2R w KQ - 0 1', []],
    ['not through check', '4k3/8/8/8/5r2/8/8/R3K2R w KQ - 0 1', ['long']],
    ['not into check', '4k3/8/8/8/6r1/8/8/R3K2R w KQ - 0 1', ['long']],
    ['with a rook that is attacked', '4k3/8/8/8/r6r/8/8/R3K2R w KQ - 0 1', ['short', 'long']],
    ['with a rook that passes an attacked square', '4k3/8/8/8/1r6/8/8/R3K3 w Q - 0 1', ['long']],
    ['not over a man beside the rook', '4k3/8/8/8/8/8/8/RN2K2R w KQ - 0 1', ['short']],
    ['not over a man of the other side', '4k3/8/8/8/8/8/8/R3K1nR w KQ - 0 1', ['long']],
  ])('%s', (_what, fen, expected) => {
    expect(castlings(fen)).toEqual(expected);
  });
});

test.each([
  ['the king moves', 15, 'e1', 'e2', 12],
  ['a rook moves', 15, 'h1', 'h5', 14],
  ['a rook is taken', 15, 'b7', 'a8', 7],
  ['a rook takes a rook', 15, 'h1', 'h8', 10],
  ['something else', 15, 'd2', 'd4', 15],
])('rights after: %s', (_what, rights, from, to, left) => {
  expect(rightsAfter(rights, parseSquare(from) ?? -1, parseSquare(to) ?? -1)).toBe(left);
});

test('the table has the four castlings in FEN order, and adding them makes king moves of two squares', () => {
  expect(CASTLINGS.map(({ letter }) => letter).join('')).toBe('KQkq');
  const moves: Move[] = [];
  addCastlings(positionOf('r3k2r/8/8/8/8/8/8/R3K2R w KQkq - 0 1'), moves);
  expect(moves.map(({ from, to }) => to - from)).toEqual([2, -2]);
});
