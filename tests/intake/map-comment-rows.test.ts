import { describe, expect, test } from 'vitest';
import { checkColumns, findColumns, mapCommentRow } from '#lib/intake/map-comment-rows.ts';

const frame = { exportedAt: new Date('2026-11-28T12:00:00Z'), zone: 'UTC' };
const columns = { author: 0, text: 1, time: 2, link: 3, id: null, reply: null };

describe('[P2] columns are found by their heads', () => {
  const rows: [string, string[], object][] = [
    ['the plain names', ['author', 'text', 'time', 'link'], columns],
    [
      'another order, other words, capitals',
      ['Published At', 'Comment', 'User Name'],
      { author: 2, text: 1, time: 0, link: null, id: null, reply: null },
    ],
    [
      'German',
      ['Verfasser', 'Kommentar', 'Zeit'],
      { author: 0, text: 1, time: 2, link: null, id: null, reply: null },
    ],
    [
      "heads that are nobody's",
      ['__proto__', 'text', 'constructor'],
      { author: null, text: 1, time: null, link: null, id: null, reply: null },
    ],
  ];
  test.each(rows)('[P2] %s', (_why, heads, expected) => {
    expect(findColumns(heads)).toEqual({ ok: true, value: expected });
  });

  test('[A20] no column for the text, or two: refused, the heads are named', () => {
    expect(findColumns(['author', 'when'])).toEqual({
      ok: false,
      reason: { code: 'no-text-column', heads: ['author', 'when'] },
    });
    expect(findColumns(['text', 'author', 'Text'])).toEqual({
      ok: false,
      reason: { code: 'doubled-column', head: 'Text' },
    });
  });

  test('[A20] a column that the upload has not is refused', () => {
    expect(checkColumns(columns, 4).ok).toBe(true);
    expect(checkColumns(columns, 3)).toEqual({
      ok: false,
      reason: { code: 'column-out-of-range', column: 'link', columns: 3 },
    });
    expect(checkColumns({ ...columns, text: -1 }, 4).ok).toBe(false);
  });
});

describe('[P2] a row becomes a comment', () => {
  test('[P2] all four columns', () => {
    const read = mapCommentRow(['Ann', '1.Rh1', '2026-11-27T10:00:00Z', 'https://example.org/1'], 2, {
      columns,
      frame,
    });
    expect(read).toEqual({
      ok: true,
      value: {
        author: 'Ann',
        text: '1.Rh1',
        at: { from: new Date('2026-11-27T10:00:00Z'), to: new Date('2026-11-27T10:00:00Z') },
        externalId: null,
        link: 'https://example.org/1',
        isEdited: false,
        isReply: false,
      },
    });
  });

  const refused: [string, string[], object][] = [
    ['an empty text', ['Ann', '  ', '', ''], { code: 'no-text', row: 7 }],
    ['a row that ends before the text', ['Ann'], { code: 'no-such-column', row: 7, column: 'text' }],
    [
      'a time that is none is not taken for "no time"',
      ['Ann', 'Rh1', 'soon', ''],
      { code: 'bad-time', row: 7, column: 'time', found: 'soon' },
    ],
    [
      'a text beyond the bound',
      ['Ann', 'x'.repeat(20_001), '', ''],
      { code: 'too-long', row: 7, most: 20_000 },
    ],
  ];
  test.each(refused)('[A20] %s is refused with its row', (_why, cells, reason) => {
    expect(mapCommentRow(cells, 7, { columns, frame })).toEqual({ ok: false, reason });
  });

  test('[A19] one spreadsheet guard comes off a cell', () => {
    const read = mapCommentRow(["'=Ann", "'-2 Rh1", '', ''], 2, { columns, frame });
    expect(read.ok ? [read.value.author, read.value.text] : null).toEqual(['=Ann', '-2 Rh1']);
  });

  test('[P4] a parent makes it a reply, a zero or nothing does not', () => {
    const withReply = { ...columns, link: null, reply: 3 };
    const isReply = (cell: string): boolean | null => {
      const read = mapCommentRow(['Ann', 'Rh1', '', cell], 2, { columns: withReply, frame });
      return read.ok ? read.value.isReply : null;
    };
    expect(['', '0', 'false', 'c17', 'true'].map(isReply)).toEqual([false, false, false, true, true]);
  });
});
