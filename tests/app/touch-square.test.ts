import { expect, test } from 'vitest';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { parseSquare } from '#lib/rules/position.ts';
import { squareAfterKey, squareAt } from '../../app/_ui/board/board-grid.ts';
import { reachable, touchSquare } from '../../app/_ui/board/touch-square.ts';
import { positionOf } from '../support/positions.ts';

const at = (name: string): number => parseSquare(name) ?? -1;
const LEGAL = legalMoves(positionOf('8/P3k3/8/8/8/8/4K3/R6R w - - 0 1'));

test('a man that can move is chosen, with every square it can reach', () => {
  const touched = touchSquare(LEGAL, null, at('e2'));
  expect(touched.kind).toBe('choose');
  expect(touched.kind === 'choose' && touched.targets).toHaveLength(8);
});

test('a reachable square moves the chosen man; another man of one’s own is chosen instead', () => {
  expect(touchSquare(LEGAL, at('a1'), at('d1')).kind).toBe('move');
  expect(touchSquare(LEGAL, at('a1'), at('h1')).kind).toBe('choose');
});

test('a pawn that promotes offers four men, and one reachable square', () => {
  const touched = touchSquare(LEGAL, at('a7'), at('a8'));
  expect(touched.kind === 'move' && touched.candidates).toHaveLength(4);
  expect(reachable(LEGAL, at('a7'))).toEqual([at('a8')]);
});

test('the chosen man again, or a square it cannot reach, lets it go', () => {
  expect(touchSquare(LEGAL, at('a1'), at('a1')).kind).toBe('let-go');
  expect(touchSquare(LEGAL, at('a1'), at('h8')).kind).toBe('let-go');
});

test('an empty square or the other side’s man means nothing while none is chosen', () => {
  expect(touchSquare(LEGAL, null, at('d4')).kind).toBe('nothing');
  expect(touchSquare(LEGAL, null, at('e7')).kind).toBe('nothing');
});

const KEYS: [string, string, string, boolean, boolean][] = [
  ['e4', 'ArrowUp', 'e5', false, false],
  ['e4', 'ArrowUp', 'e3', true, false],
  ['e4', 'ArrowLeft', 'd4', false, false],
  ['e4', 'ArrowLeft', 'f4', true, false],
  ['h8', 'ArrowRight', 'h8', false, false],
  ['a1', 'ArrowDown', 'a1', false, false],
  ['e4', 'Home', 'a4', false, false],
  ['e4', 'End', 'h4', false, false],
  ['e4', 'Home', 'a8', false, true],
  ['e4', 'End', 'h1', false, true],
  ['e4', 'Home', 'h1', true, true],
];
test.each(KEYS)(
  'from %s the key %s leads to %s (turned: %s, Ctrl: %s)',
  (from, key, to, isFlipped, isControl) => {
    expect(squareAfterKey(at(from), key, { isFlipped, isControl })).toBe(at(to));
  },
);

test('other keys are left to the browser', () => {
  expect(squareAfterKey(0, 'Tab', { isFlipped: false, isControl: false })).toBeNull();
});

test('rows and columns of the board cover every square once, both ways', () => {
  for (const isFlipped of [true, false]) {
    const all = Array.from({ length: 64 }, (_, i) => squareAt(i >> 3, i & 7, isFlipped));
    expect(new Set(all).size).toBe(64);
  }
});
