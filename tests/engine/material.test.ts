import { expect, test } from 'vitest';
import { materialCode, materialsBelow, nameMaterial, parseMaterial, placesOf } from '#lib/engine/material.ts';

test('[V4] material is named with the stronger side first', () => {
  expect(nameMaterial(['r'], ['q'])).toEqual({ material: 'KQKR', isTurned: true });
  expect(nameMaterial(['n', 'b'], [])).toEqual({ material: 'KBNK', isTurned: false });
  expect(nameMaterial(['q'], ['p', 'p'])).toEqual({ material: 'KPPKQ', isTurned: true });
  expect(nameMaterial(['p'], ['p'])).toEqual({ material: 'KPKP', isTurned: false });
});

test('[V4] a name that is turned, disordered or of five men is no table', () => {
  for (const name of ['KRKQ', 'KNBK', 'KQRPK', 'KK', 'K', 'KXK', 'kqk', '']) {
    expect(parseMaterial(name), name).toBeNull();
  }
  expect(parseMaterial('KBNK')).toEqual({ white: ['n', 'b'], black: [] });
});

test('[V4] a table needs those that captures and promotions lead to', () => {
  expect(materialsBelow('KQKR')).toEqual(['KQK', 'KRK']);
  expect(materialsBelow('KBBK')).toEqual(['KBK']);
  expect(materialsBelow('KPK')).toEqual(['KBK', 'KNK', 'KQK', 'KRK']);
  expect(materialsBelow('KRKP')).toEqual(['KBK', 'KNK', 'KPK', 'KQK', 'KQKR', 'KRK', 'KRKB', 'KRKN', 'KRKR']);
});

test('[V4] sizes and codes: a white king on 16 squares, with pawns on 32', () => {
  expect(placesOf('KQK')).toBe(16 * 64 * 64);
  expect(placesOf('KPKP')).toBe(32 * 64 ** 3);
  expect(materialCode('KQKR')).toBe(5 | (12 << 8));
  expect(materialCode('KBNK')).toBe(3 | (2 << 8));
});
