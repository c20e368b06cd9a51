import { describe, expect, test } from 'vitest';
import type { Material } from '#lib/engine/material.ts';
import { createTableSet, type TableResult } from '#lib/engine/table-set.ts';
import { createRandom } from '#lib/kit/random.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { expectOneStepTrue, randomPlacement } from '../support/table-truth.ts';

const tables = createTableSet();

function at(fen: string): Position {
  const parsed = parseFen(fen);
  if (!parsed.ok) throw new Error(fen);
  return parsed.value;
}

const KNOWN: readonly [string, string, Partial<TableResult>][] = [
  ['8/8/8/4k3/8/8/1P6/1K6 w - - 0 1', 'pawn and king, White wins or not by one tempo', { material: 'KPK' }],
  ['7k/5Q2/6K1/8/8/8/8/8 b - - 0 1', 'stalemate', { result: 'drawn', distance: null }],
  ['7k/6Q1/6K1/8/8/8/8/8 b - - 0 1', 'mated', { result: 'lost', distance: 0 }],
  ['7K/6q1/6k1/8/8/8/8/8 w - - 0 1', 'mated, colours turned', { result: 'lost', distance: 0 }],
  ['8/8/8/8/8/k7/p7/K7 w - - 0 1', 'stalemate by a black pawn', { result: 'drawn' }],
  ['8/8/8/8/8/6k1/4K3/8 w - - 0 1', 'two kings need no table', { material: 'KK', result: 'drawn' }],
  [
    '4k3/8/4K3/4P3/8/8/8/8 w - - 0 1',
    'king before the pawn, on the sixth: won whoever moves',
    { result: 'won' },
  ],
  ['4k3/8/4K3/4P3/8/8/8/8 b - - 0 1', 'the same with Black to move', { result: 'lost' }],
  ['k7/8/K7/P7/8/8/8/8 w - - 0 1', "rook's pawn: drawn", { result: 'drawn' }],
];

describe('results of single positions', () => {
  for (const [fen, why, expected] of KNOWN) {
    test(`[V4] ${why}: ${fen}`, () => {
      expect(tables.probe(at(fen))).toMatchObject(expected);
    });
  }

  test('[V4] a castling right means no table', () => {
    const position = at('4k3/8/8/8/8/8/8/4K2R w K - 0 1');
    expect(tables.covers(position)).toBe(false);
    expect(tables.probe(position)).toBeNull();
  });

  test('[V4] five men have no table', () => {
    expect(tables.covers(at('4k3/8/8/8/8/8/8/2B1KBNR w - - 0 1'))).toBe(false);
  });
});

describe('every value follows from the values after the legal moves of the rules', () => {
  const SEED = 20_240_917;
  const MATERIALS: readonly Material[] = ['KQK', 'KRK', 'KPK', 'KBK', 'KNK', 'KQKR', 'KBBK', 'KRKN'];
  for (const material of MATERIALS) {
    test(`[V4] ${material}, 400 positions of either colour, seed ${SEED}`, () => {
      const random = createRandom(SEED);
      for (let i = 0; i < 400; i++) {
        expectOneStepTrue(tables, randomPlacement(material, random));
      }
    });
  }
});

test('[V4] a damaged table from the store is built again and saved whole', () => {
  const saved: Material[] = [];
  const set = createTableSet({ load: () => new Uint8Array(40), save: (material) => saved.push(material) });
  expect(set.probe(at('7k/6Q1/6K1/8/8/8/8/8 b - - 0 1'))?.distance).toBe(0);
  expect(saved).toEqual(['KQK']);
});
