import { expect, test } from 'vitest';
import { placesOf } from '#lib/engine/material.ts';
import { openTable, sealTable, TABLE_HEADER, TABLE_VERSION } from '#lib/engine/table-format.ts';

function sample(): Uint8Array {
  const table = new Uint8Array(TABLE_HEADER + 2 * placesOf('KQK'));
  for (let i = TABLE_HEADER; i < table.length; i++) table[i] = (i * 7) & 255;
  return sealTable('KQK', table);
}

test('[V4] what was sealed opens, also from an odd place in a larger buffer', () => {
  const table = sample();
  const opened = openTable('KQK', table);
  expect(opened.ok && opened.value.length).toBe(2 * placesOf('KQK'));
  const moved = new Uint8Array(table.length + 1);
  moved.set(table, 1);
  expect(openTable('KQK', moved.subarray(1)).ok).toBe(true);
});

test('[V4] one changed byte anywhere in the values is seen', () => {
  for (const place of [TABLE_HEADER, TABLE_HEADER + 1, 70_001, TABLE_HEADER + 2 * placesOf('KQK') - 1]) {
    const table = sample();
    table[place] = (table[place] ?? 0) ^ 1;
    expect(openTable('KQK', table)).toEqual({ ok: false, reason: { code: 'wrong-checksum' } });
  }
});

test('[V4] another version, another material, a cut end and foreign bytes are refused by name', () => {
  const old = sample();
  old[4] = TABLE_VERSION + 1;
  expect(openTable('KQK', old)).toEqual({
    ok: false,
    reason: { code: 'other-version', found: TABLE_VERSION + 1, expected: TABLE_VERSION },
  });
  expect(openTable('KRK', sample())).toMatchObject({
    ok: false,
    reason: { code: 'other-material', found: 'KQK' },
  });
  expect(openTable('KQK', sample().subarray(0, 5000))).toMatchObject({
    ok: false,
    reason: { code: 'wrong-length' },
  });
  expect(openTable('KQK', new Uint8Array(5000))).toMatchObject({
    ok: false,
    reason: { code: 'not-a-table' },
  });
  expect(openTable('KQK', new Uint8Array(3))).toMatchObject({ ok: false, reason: { code: 'not-a-table' } });
});
