import { describe, expect, test } from 'vitest';
import { guardCell, unguardCell } from '#lib/kit/spreadsheet-cell.ts';

describe('[A19] cells that a spreadsheet could run', () => {
  const guarded = [
    '=1+1',
    '+49',
    '-2',
    '@SUM(A1)',
    '\t=1',
    '\r=1',
    '\n=1',
    '\0=1',
    '＝1',
    '"=1',
    "'=1",
    ' =1',
    '\t',
    '"\t',
  ];
  test.each(guarded)('[A19] %j is written with an apostrophe', (cell) => {
    expect(guardCell(cell)).toBe(`'${cell}`);
  });

  const plain = ['1.Rh1', 'Ann', '', "'tis", "rock 'n' roll", '5=5', 'a-b', '0-0'];
  test.each(plain)('[A19] %j stays as it is, both ways', (cell) => {
    expect(guardCell(cell)).toBe(cell);
    expect(unguardCell(cell)).toBe(cell);
  });

  test('[A19] exactly one guard comes off, so that the round trip is exact', () => {
    for (const cell of [...guarded, ...plain, "''=1", "'''=x"])
      expect(unguardCell(guardCell(cell))).toBe(cell);
  });
});
