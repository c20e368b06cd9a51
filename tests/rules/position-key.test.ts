import { expect, test } from 'vitest';
import { bookPosition, positionKey } from '#lib/rules/position-key.ts';
import { afterMoves, positionOf, START_FEN } from '../support/positions.ts';

test('[V6] the same position by another order of moves has the same key', () => {
  const one = afterMoves(START_FEN, ['g1f3', 'g8f6', 'b1c3']);
  const other = afterMoves(START_FEN, ['b1c3', 'g8f6', 'g1f3']);
  expect(positionKey(one)).toBe(positionKey(other));
});

test.each([
  ['nobody can capture', '4k3/8/8/8/4P3/8/8/4K3 b - e3 0 1', '4k3/8/8/8/4P3/8/8/4K3 b - -'],
  ['a pawn can', '4k3/8/8/8/3pP3/8/8/4K3 b - e3 0 1', '4k3/8/8/8/3pP3/8/8/4K3 b - e3'],
  ['the only pawn is pinned', '8/8/8/K2pP2r/8/8/8/7k w - d6 0 1', '8/8/8/K2pP2r/8/8/8/7k w - -'],
])('[V6] the en passant square counts only if a capture is legal: %s', (_what, fen, key) => {
  expect(positionKey(positionOf(fen))).toBe(key);
});

test('[V5] the clock joins from 80 on', () => {
  const key = '4k3/8/8/8/8/8/8/4K2R w - -';
  expect(bookPosition(positionOf(`${key} 79 100`))).toBe(key);
  expect(bookPosition(positionOf(`${key} 80 100`))).toBe(`${key} 80`);
  expect(bookPosition(positionOf(`${key} 99 100`))).toBe(`${key} 99`);
});
