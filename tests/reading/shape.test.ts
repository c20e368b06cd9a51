import { expect, test } from 'vitest';
import { shapeOf, turnShape } from '#lib/reading/shape.ts';

test('[R2] one file and one rank are one square, anything less is none', () => {
  expect(shapeOf({ toFiles: 1 << 4, toRanks: 1 << 3 }).to).toBe(28);
  expect(shapeOf({ toFiles: 1 << 4 }).to).toBe(-1);
  expect(shapeOf({ toFiles: 0, toRanks: 1 }).to).toBe(-1);
  expect(shapeOf({ toFiles: 1 << 4, toRanks: 1 << 3, isRelative: true }).to).toBe(-1);
});

test('[R14] a turned board takes a1 for h8, and turning twice changes nothing', () => {
  const corner = shapeOf({ toFiles: 1, toRanks: 1, fromFiles: 1 << 1 });
  expect(turnShape(corner)).toMatchObject({ to: 63, fromFiles: 1 << 6 });
  expect(turnShape(turnShape(corner))).toEqual(corner);
});
