import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { tailpiece } from '../support/command-line.ts';
import { readCase } from '../support/read-cases.ts';

const folder = mkdtempSync(join(tmpdir(), 'lots-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const rfc = JSON.parse(readCase('rfc3797.json'));

test('[S4] the worked example of RFC 3797, from a file', async () => {
  const names = file('names.txt', `${rfc.pool.join('\r\n')}\n\n`);
  const { status, out, err } = await tailpiece([
    'lots',
    '--names',
    names,
    '--entropy',
    rfc.entropy,
    '--count',
    '10',
  ]);
  expect([status, err]).toEqual([0, '']);
  const answer = JSON.parse(out);
  expect(answer).toMatchObject({ chosen: rfc.chosen, key: rfc.key, names: 25 });
  expect(answer.steps.map((step: object) => Object.values(step))).toHaveLength(10);
  expect(answer.steps[0]).toEqual({
    affix: '0000',
    md5: rfc.steps[0][1],
    poolSize: 25,
    remainder: 16,
    number: 17,
    name: 'Lee',
  });
});

test.each([
  ['no names', '\n \n', '1', '1', '--names: expected a file with one name a line, found none'],
  ['more than there are', 'Ann\nBo\n', '1', '3', '--count: expected a whole number from 1 to 2, found "3"'],
  ['no number', 'Ann\n', 'weather', '1', '--entropy: source 1: expected whole numbers, found "weather"'],
  [
    'an empty source',
    'Ann\n',
    '5 //',
    '1',
    '--entropy: source 2 holds no number; expected whole numbers, a slash between sources',
  ],
])('[S4] refused: %s', async (_what, names, entropy, count, complaint) => {
  const { status, out, err } = await tailpiece([
    'lots',
    '--names',
    file('few.txt', names),
    '--entropy',
    entropy,
    '--count',
    count,
  ]);
  expect([status, out, err]).toEqual([2, '', `tailpiece: lots: ${complaint}\n`]);
});

test('a file that is no text is refused', async () => {
  const names = file('bytes', Uint8Array.from([255, 254, 200, 10]));
  const { status, err } = await tailpiece(['lots', '--names', names, '--entropy', '1', '--count', '1']);
  expect([status, err]).toEqual([
    2,
    `tailpiece: lots: --names: cannot read "${names}": it is not UTF-8 text\n`,
  ]);
});
