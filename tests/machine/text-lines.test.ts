import { expect, test } from 'vitest';
import { type TextLine, textLines } from '#lib/machine/text-lines.ts';

async function linesOf(chunks: readonly (string | number[])[], longest?: number): Promise<TextLine[]> {
  async function* stream(): AsyncGenerator<Uint8Array> {
    for (const chunk of chunks) yield Buffer.from(typeof chunk === 'string' ? Buffer.from(chunk) : chunk);
  }
  const lines: TextLine[] = [];
  for await (const line of textLines(stream(), longest)) lines.push(line);
  return lines;
}

test.each([
  ['whole lines', ['a\nb\n'], ['a', 'b']],
  ['no line feed at the end', ['a\nb'], ['a', 'b']],
  ['parted anywhere', ['a', 'b\nc', '', 'd', '\n'], ['ab', 'cd']],
  ['empty lines', ['\n\na\n'], ['', '', 'a']],
  ['carriage returns', ['a\r', '\nb\r\n'], ['a', 'b']],
  ['a letter parted between chunks', [[0xc3], [0xa9, 10]], ['é']],
  ['a byte order mark', ['\uFEFF{}\n'], ['{}']],
  ['nothing', [], []],
])('%s', async (_what, chunks, texts) => {
  expect(await linesOf(chunks)).toEqual(texts.map((text, index) => ({ line: index + 1, text })));
});

test('a line over the bound is reported in its place, and the next is read', async () => {
  expect(await linesOf(['aaaa', 'a\nbb\n', 'ccccccc\n', 'd'], 4)).toEqual([
    { line: 1, fault: 'too-long' },
    { line: 2, text: 'bb' },
    { line: 3, fault: 'too-long' },
    { line: 4, text: 'd' },
  ]);
  expect(await linesOf(['aaaaa'], 4)).toEqual([{ line: 1, fault: 'too-long' }]);
});

test('bytes that are no UTF-8 are reported in their place', async () => {
  expect(await linesOf([[0x61, 10, 0xff, 10, 0x62]])).toEqual([
    { line: 1, text: 'a' },
    { line: 2, fault: 'not-utf8' },
    { line: 3, text: 'b' },
  ]);
});

test('no more is read than is asked for', async () => {
  let given = 0;
  async function* stream(): AsyncGenerator<Uint8Array> {
    for (; given < 1000; given += 1) yield Buffer.from('x\n');
  }
  for await (const { line } of textLines(stream())) if (line === 10) break;
  expect(given).toBeLessThanOrEqual(10);
});
