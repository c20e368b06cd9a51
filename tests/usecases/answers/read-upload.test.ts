import { expect, test } from 'vitest';
import { readUpload, type Upload } from '#lib/usecases/answers/read-upload.ts';

const frame = { exportedAt: new Date('2026-11-28T12:00:00Z'), zone: 'UTC' };

async function read(
  text: string,
  format: Upload['format'],
  columns: Upload['columns'] = null,
): Promise<unknown[]> {
  const opened = await readUpload({ bytes: new TextEncoder().encode(text), format, columns, frame });
  if (!opened.ok) return [opened.reason.code];
  const out: unknown[] = [opened.value.heads];
  for await (const row of opened.value.rows) {
    out.push(row.ok ? [row.value.row, row.value.record?.text ?? row.value.reason?.code] : row.reason.code);
  }
  return out;
}

test('[P2] a paste and a file give rows of the same kind, with the refused ones in their places', async () => {
  expect(await read('Ann\nRh1\n\nBee\n\nCid\nQb1', 'pasted')).toEqual([
    null,
    [1, 'Rh1'],
    [4, 'no-text'],
    [6, 'Qb1'],
  ]);
  expect(await read('author,text\nAnn,Rh1\nBee,\nCid,Qb1', 'csv')).toEqual([
    ['author', 'text'],
    [2, 'Rh1'],
    [3, 'no-text'],
    [4, 'Qb1'],
  ]);
  expect(await read('{"text":"Rh1"}\n{"text":""}', 'jsonl')).toEqual([['text'], [2, 'Rh1'], [3, 'no-text']]);
});

test('[P2] columns that the host picked win over their heads', async () => {
  const columns = { author: null, text: 0, time: null, link: null, id: null, reply: null };
  expect(await read('who,what\nRh1,x', 'csv', columns)).toEqual([
    ['who', 'what'],
    [2, 'Rh1'],
  ]);
  expect(await read('who,what\nRh1,x', 'csv')).toEqual(['no-text-column']);
  expect(await read('who\nRh1', 'csv', { ...columns, text: 5 })).toEqual(['column-out-of-range']);
});

test('[A20] damage further down ends the rows with its reason', async () => {
  expect((await read('author,text\nAnn,"Rh1', 'csv')).at(-1)).toBe('open-quote');
  expect(await read('\u0000', 'csv')).toEqual(['not-text']);
  expect(await read('  ', 'pasted')).toEqual(['paste-empty']);
});
