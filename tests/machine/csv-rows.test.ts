import { describe, expect, test } from 'vitest';
import { formatOf, openTable, type TableFormat } from '#lib/machine/csv-rows.ts';

async function read(input: string | Uint8Array, format: TableFormat = 'csv'): Promise<unknown[]> {
  const bytes = typeof input === 'string' ? new TextEncoder().encode(input) : input;
  const table = await openTable(bytes, format);
  if (!table.ok) return [table.reason];
  const out: unknown[] = [table.value.heads];
  for await (const row of table.value.rows) out.push(row.ok ? row.value.cells : row.reason);
  return out;
}

describe('[A20] uploads become rows', () => {
  const rows: [string, string, TableFormat, unknown[]][] = [
    [
      'plain CSV',
      'author,text\nAnn,Rh1\n',
      'csv',
      [
        ['author', 'text'],
        ['Ann', 'Rh1'],
      ],
    ],
    [
      'semicolons, quotes, a line break in a cell',
      'author;text\r\nAnn;"1.Rh1\n""best"""\r\n',
      'csv',
      [
        ['author', 'text'],
        ['Ann', '1.Rh1\n"best"'],
      ],
    ],
    [
      'a byte order mark',
      '\ufeffauthor,text\nAnn,Rh1',
      'csv',
      [
        ['author', 'text'],
        ['Ann', 'Rh1'],
      ],
    ],
    [
      'a quote inside a bare cell is a character',
      'author,text\nAnn,He said "Rh1"',
      'csv',
      [
        ['author', 'text'],
        ['Ann', 'He said "Rh1"'],
      ],
    ],
    [
      'tabs',
      'author\ttext\nAnn\tRh1, I think',
      'tsv',
      [
        ['author', 'text'],
        ['Ann', 'Rh1, I think'],
      ],
    ],
    [
      'rows of other lengths, empty lines',
      'author,text,time\n\nAnn,Rh1\nBee,Qb1,x,y',
      'csv',
      [
        ['author', 'text', 'time'],
        ['Ann', 'Rh1'],
        ['Bee', 'Qb1', 'x', 'y'],
      ],
    ],
    [
      'JSON Lines',
      '{"author":"Ann","text":"Rh1"}\n{"text":"Qb1"}\n',
      'jsonl',
      [
        ['author', 'text'],
        ['Ann', 'Rh1'],
        ['', 'Qb1'],
      ],
    ],
  ];
  test.each(rows)('[A20] %s', async (_why, text, format, expected) => {
    expect(await read(text, format)).toEqual(expected);
  });

  test('[A20] UTF-16 is read by its mark', async () => {
    const bytes = new Uint8Array([
      0xff,
      0xfe,
      ...[...'text\nRh1'].flatMap((sign) => [sign.charCodeAt(0), 0]),
    ]);
    expect(await read(bytes)).toEqual([['text'], ['Rh1']]);
  });
});

describe('[A20] uploads that are refused name the row and what is wrong', () => {
  const rows: [string, string | Uint8Array, TableFormat, unknown][] = [
    ['nothing', '', 'csv', { code: 'file-empty' }],
    ['a quote that is never closed', 'author,text\nAnn,"Rh1\n', 'csv', { code: 'open-quote', row: 2 }],
    [
      'a line beyond the bound',
      `author,text\nAnn,${'x'.repeat(300_000)}\n`,
      'csv',
      { code: 'row-too-long', row: 2, mostBytes: 262_144 },
    ],
    [
      'an open quote that swallows the file',
      `author,text\nAnn,"${'x\n'.repeat(200_000)}`,
      'csv',
      { code: 'row-too-long', row: 2, mostBytes: 262_144 },
    ],
    [
      'a million columns',
      `${'a,'.repeat(100_000)}\nx`,
      'csv',
      { code: 'too-many-columns', row: 1, most: 200 },
    ],
    ['NUL', 'text\nRh1\0', 'csv', { code: 'not-text', row: 1 }],
    ['bytes that are no UTF-8', new Uint8Array([0x74, 0xc3, 0x28]), 'csv', { code: 'not-text', row: 1 }],
    ['gzip', new Uint8Array([0x1f, 0x8b, 8, 0]), 'csv', { code: 'file-is-compressed' }],
    ['a broken line of JSON', '{"text":"Rh1"}\n{"text":', 'jsonl', { code: 'not-json', row: 3 }],
  ];
  test.each(rows)('[A20] %s', async (_why, input, format, expected) => {
    expect((await read(input, format)).at(-1)).toEqual(expected);
  });

  test('[A20] rows may be left undrawn: the parser is let go', async () => {
    const table = await openTable(new TextEncoder().encode(`text\n${'Rh1\n'.repeat(200_000)}`), 'csv');
    if (!table.ok) throw new Error('refused');
    for await (const row of table.value.rows) {
      expect(row.ok && row.value.cells).toEqual(['Rh1']);
      break;
    }
  });

  test('[A20] the format is told by the name, else by the beginning', () => {
    expect(formatOf('a.jsonl', 'x')).toBe('jsonl');
    expect(formatOf('a.TSV', 'x')).toBe('tsv');
    expect(formatOf('a.txt', ' {"text":1}')).toBe('jsonl');
    expect(formatOf('a.csv', 'author,text')).toBe('csv');
  });
});
