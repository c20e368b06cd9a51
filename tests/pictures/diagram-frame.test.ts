import { expect, test } from 'vitest';
import { diagramFrame, SQUARE_UNITS, squareCorner } from '#lib/pictures/diagram-frame.ts';

test('the frame holds the board and its outline, with or without coordinates', () => {
  for (const has of [true, false]) {
    const { left, top, width, height } = diagramFrame(has);
    expect(left + 8 * SQUARE_UNITS + 1).toBeLessThanOrEqual(width);
    expect(top + 8 * SQUARE_UNITS + 1).toBeLessThanOrEqual(height);
  }
});

test('a1 lies below left, h8 above right; turned, the other way round', () => {
  expect(squareCorner(0, false)).toEqual([0, 280]);
  expect(squareCorner(63, false)).toEqual([280, 0]);
  expect(squareCorner(0, true)).toEqual([280, 0]);
  expect(squareCorner(63, true)).toEqual([0, 280]);
});

test('every square has a corner of its own, both ways', () => {
  for (const isFlipped of [true, false]) {
    const corners = new Set(
      Array.from({ length: 64 }, (_, square) => String(squareCorner(square, isFlipped))),
    );
    expect(corners.size).toBe(64);
  }
});
