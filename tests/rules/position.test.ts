import { expect, test } from 'vitest';
import { KINDS, kindOf, manOf, otherSide, parseSquare, sideOf, squareName } from '#lib/rules/position.ts';

test('every square comes back from its name, and nothing else names one', () => {
  for (let square = 0; square < 64; square += 1) expect(parseSquare(squareName(square))).toBe(square);
  for (const text of ['', 'e', 'e0', 'e9', 'i1', 'E4', 'e4 ', '4e', '`1'])
    expect(parseSquare(text)).toBeNull();
});

test('every man comes back from its byte; an empty square is neither kind nor side', () => {
  for (const side of ['w', 'b'] as const) {
    for (const kind of KINDS) {
      const man = manOf(side, kind);
      expect([sideOf(man), kindOf(man)]).toEqual([side, kind]);
    }
  }
  expect([sideOf(0), kindOf(0)]).toEqual([null, null]);
  expect([otherSide('w'), otherSide('b')]).toEqual(['b', 'w']);
});
