import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { generateTable } from '#lib/engine/generate-table.ts';
import { type Material, placesOf } from '#lib/engine/material.ts';
import { openTable } from '#lib/engine/table-format.ts';
import { createTableSet } from '#lib/engine/table-set.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';

interface Counts {
  legal: number;
  win?: number;
  loss?: number;
  draw: number;
}
interface Row {
  material: Material;
  longestWin: number;
  longestWinOfBlack?: number;
  whiteToMove?: Counts;
  blackToMove?: Counts;
}
interface Sample {
  fen: string;
  result: 'white' | 'black' | 'draw';
  dtmPlies: number | null;
}
const cases: { rows: Row[]; positions: Sample[] } = JSON.parse(
  readFileSync(new URL('../cases/endgames.json', import.meta.url), 'utf8'),
);

/** Counts over the whole board: every place stands for the mirrors of the white king's square. */
function count(material: Material, values: Uint8Array): Required<Counts> & { longest: number } {
  const mirrors = material.includes('P') ? 2 : 4;
  const counted = { legal: 0, win: 0, loss: 0, draw: 0, longest: 0 };
  for (const value of values) {
    if (value === 255) continue;
    counted.legal += mirrors;
    if (value === 0) counted.draw += mirrors;
    else if (value < 128) {
      counted.win += mirrors;
      counted.longest = Math.max(counted.longest, value);
    } else counted.loss += mirrors;
  }
  return counted;
}

const tables = createTableSet();
function halves(material: Material): [Uint8Array, Uint8Array] {
  const values = tables.values(material);
  if (values === null) throw new Error('nobody stops this');
  return [values.subarray(0, placesOf(material)), values.subarray(placesOf(material))];
}

/** The four-man tables of this test; tests/bench/tables.ts builds them all. */
const BUILT_HERE = ['KQK', 'KRK', 'KPK', 'KBNK', 'KQKR'];

describe('endgame tables against the handbook', () => {
  for (const row of cases.rows.filter(({ material }) => BUILT_HERE.includes(material))) {
    test(`[V4] ${row.material}: the longest win takes ${row.longestWin} moves`, () => {
      const [white, black] = halves(row.material).map((half) => count(row.material, half));
      expect(white?.longest).toBe(row.longestWin);
      if (row.longestWinOfBlack !== undefined) expect(black?.longest).toBe(row.longestWinOfBlack);
      if (row.whiteToMove) expect(white).toMatchObject(row.whiteToMove);
      if (row.blackToMove) expect(black).toMatchObject(row.blackToMove);
    });
  }

  test('[V4] two knights mate only where mate stands on the board in one move', () => {
    const values = openTable('KNK', generateTable('KNK', { valuesOf: () => new Uint8Array() })!);
    expect(values.ok && count('KNK', values.value)).toMatchObject({ win: 0, loss: 0 });
  });
});

test('[V4] 160 sample positions have the stated result and the exact distance', () => {
  for (const { fen, result, dtmPlies } of cases.positions) {
    const position = parseFen(fen);
    if (!position.ok) throw new Error(fen);
    const found = tables.probe(position.value);
    const mover = position.value.turn === 'w' ? 'white' : 'black';
    expect(found?.result, fen).toBe(result === 'draw' ? 'drawn' : result === mover ? 'won' : 'lost');
    const moves = dtmPlies === null ? null : Math.ceil(dtmPlies / 2);
    expect(found?.distance, fen).toBe(moves);
  }
  expect(cases.positions).toHaveLength(160);
});

test('[V0] a build stops when asked and leaves nothing half done', () => {
  let asked = 0;
  const table = generateTable('KQK', {
    valuesOf: () => new Uint8Array(),
    shouldStop: () => {
      asked += 1;
      return asked > 5;
    },
  });
  expect(table).toBeNull();
});
