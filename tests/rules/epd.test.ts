import { describe, expect, test } from 'vitest';
import { parseEpd } from '#lib/rules/epd.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { accepted, refused } from '../support/positions.ts';
import { readCaseLines } from '../support/read-cases.ts';

const ROOK = '4k3/8/8/8/8/8/8/4K2R w K -';

describe('what is taken (PGN standard 16.2)', () => {
  test.each([
    ['four fields alone', ROOK, {}],
    [
      'a move, a number, a text',
      `${ROOK} bm O-O Rh8+; dm 3; id "one; two";`,
      { bm: ['O-O', 'Rh8+'], dm: ['3'], id: ['one; two'] },
    ],
    ['no semicolon at the end', `${ROOK} id "x"`, { id: ['x'] }],
    ['an operation without operands', `${ROOK} noop; resign;`, { noop: [], resign: [] }],
    [
      'semicolons in front, six fields',
      `${ROOK} 0 1 ;D1 20 ;D2 400 ;id "a b"`,
      { D1: ['20'], D2: ['400'], id: ['a b'] },
    ],
    ['an empty text', `${ROOK} c0 "";`, { c0: [''] }],
  ])('%s', (_what, line, operations) => {
    expect(Object.fromEntries(accepted(parseEpd(line)).operations)).toEqual(operations);
  });

  test('hmvc and fmvn set the clocks', () => {
    expect(writeFen(accepted(parseEpd(`${ROOK} hmvc 12; fmvn 40;`)).position)).toBe(`${ROOK} 12 40`);
    expect(writeFen(accepted(parseEpd(`${ROOK} hmvc x;`)).position)).toBe(`${ROOK} 0 1`);
    expect(writeFen(accepted(parseEpd(`${ROOK} 7 8;`)).position)).toBe(`${ROOK} 7 8`);
  });

  test('every line of the node count suite keeps its position and its name', () => {
    for (const line of readCaseLines('perft.epd')) {
      const { position, operations } = accepted(parseEpd(line));
      expect(writeFen(position)).toBe(line.split(' ;')[0]);
      expect(line).toContain(`id "${operations.get('id')?.[0]}"`);
    }
  });
});

describe('what is refused', () => {
  test.each([
    ['nothing', '', { code: 'position', fen: { code: 'field-count', found: 0 } }],
    ['three fields', '8/8/8/8/8/8/8/8 w -', { code: 'position', fen: { code: 'field-count', found: 3 } }],
    ['an open quote', `${ROOK} id "one; bm Rh8+;`, { code: 'operation', number: 1, found: '"one; bm Rh8+;' }],
  ])('%s', (_what, line, reason) => {
    expect(refused(parseEpd(line))).toEqual(reason);
  });
});
