import { expect, test } from 'vitest';
import { arrowPath } from '#lib/pictures/arrow-path.ts';

test('an arrow along the first rank runs level, from the edge of the man to short of the square’s middle', () => {
  expect(arrowPath(3, 7, false)).toBe('M153 300L287 300M279 295L287 300L279 305');
});

test('turned, the same arrow runs the other way', () => {
  expect(arrowPath(3, 7, true)).toBe('M167 20L33 20M41 25L33 20L41 15');
});

test('an arrow that goes nowhere is still a path: no division by nothing', () => {
  expect(arrowPath(5, 5, false)).not.toContain('NaN');
});
