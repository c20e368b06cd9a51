import { describe, expect, test } from 'vitest';
import { LONGEST_PASTE, parsePastedBlock } from '#lib/intake/parse-pasted-block.ts';

const frame = { exportedAt: new Date('2026-11-28T12:00:00Z'), zone: 'UTC' };

function read(
  paste: string,
): { records: [number, string | null, string, string | null][]; refused: unknown[] } | string {
  const found = parsePastedBlock(paste, frame);
  if (!found.ok) return found.reason.code;
  return {
    records: found.value.records.map(({ row, record }) => [
      row,
      record.author,
      record.text,
      record.at?.to.toISOString() ?? null,
    ]),
    refused: [...found.value.refused],
  };
}

describe('[P2] one comment a block, the first line the author', () => {
  test('[P2] two blocks, the second with a text of two lines', () => {
    expect(read('Ilse Varga\n1.Rh1 Bd7 2.Qb1\n\nTomasz B.\nRh1!\nlovely')).toEqual({
      records: [
        [1, 'Ilse Varga', '1.Rh1 Bd7 2.Qb1', null],
        [4, 'Tomasz B.', 'Rh1!\nlovely', null],
      ],
      refused: [],
    });
  });

  const rows: [string, string, [number, string | null, string, string | null]][] = [
    ['an @ and a colon belong to the page, not to the name', '@rook_77:\nQb1', [1, 'rook_77', 'Qb1', null]],
    ['a second line that is a time', 'Ann\n2 days ago\nRh1', [1, 'Ann', 'Rh1', '2026-11-26T12:00:00.000Z']],
    [
      'a time behind a middle dot',
      'Ann · 2 days ago (edited)\nRh1',
      [1, 'Ann', 'Rh1', '2026-11-26T12:00:00.000Z'],
    ],
    [
      'a second line that is all there is stays the text, even if it looks like a time',
      'Ann\n2 days ago',
      [1, 'Ann', '2 days ago', null],
    ],
    [
      'line ends of another system, blanks on the empty line',
      '\r\n \r\nAnn\r\nRh1\r\n  \r\n',
      [3, 'Ann', 'Rh1', null],
    ],
    ['an author with a middle dot and no time', 'Ann · the rook\nRh1', [1, 'Ann · the rook', 'Rh1', null]],
    ['an accent typed as two characters', 'Rene\u0301\nRh1', [1, 'René', 'Rh1', null]],
  ];
  test.each(rows)('[P2] %s', (_why, paste, expected) => {
    expect(read(paste)).toEqual({ records: [expected], refused: [] });
  });

  test('[P2] a block that has no text is named with its line, the others are kept', () => {
    expect(read('Ann\n\nBee\nRh1\n\n@\nx')).toEqual({
      records: [
        [3, 'Bee', 'Rh1', null],
        [6, '@', 'x', null],
      ],
      refused: [{ code: 'no-text', row: 1 }],
    });
  });

  test('[A20] bounds: nothing, too much, too long a comment', () => {
    expect(read(' \n ')).toBe('paste-empty');
    expect(read('x'.repeat(LONGEST_PASTE + 1))).toBe('paste-too-long');
    expect(read('a\nb\n\n'.repeat(20_001))).toBe('too-many-comments');
    expect(read(`Ann\n${'x'.repeat(20_001)}`)).toEqual({
      records: [],
      refused: [{ code: 'too-long', row: 1, most: 20_000 }],
    });
  });
});
