import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { describe, expect, test } from 'vitest';
import { tailpiece } from '../support/command-line.ts';
import { START_FEN } from '../support/positions.ts';

describe('bad arguments: status 2, nothing on standard output, one line that names the field', () => {
  test.each([
    ['no command', [], 'which command? Expected one of perft'],
    ['no such command', ['solve'], '"solve" is no command: expected one of perft'],
    [
      'no such option',
      ['perft', '--fen', START_FEN, '--plies', '3'],
      'perft: "--plies" is no option: expected --fen, --depth',
    ],
    ['a word without an option', ['perft', 'x'], 'perft: "x" is no option'],
    [
      'an option without its value',
      ['perft', '--depth'],
      'perft: --depth: expected a whole number of plies, found nothing',
    ],
    ['a required option missing', ['perft', '--depth', '3'], 'perft: --fen is missing: expected a FEN'],
    ['an option twice', ['perft', '--depth', '3', '--depth=4'], 'perft: --depth is given twice'],
    ['a switch with a value', ['prove', '--proof=yes'], 'prove: --proof takes no value'],
    [
      'a bad number',
      ['perft', '--fen', START_FEN, '--depth', '-1'],
      'perft: --depth: expected a whole number from 0 to 30, found "-1"',
    ],
    [
      'a bad FEN',
      ['prove', '--fen', '8/8/8/8/8/8/8/K7 w - - 0 1', '--moves', '2'],
      'prove: --fen: Black must have one king and has 0.',
    ],
    [
      'no moves',
      ['prove', '--fen', START_FEN, '--moves', '0'],
      'prove: --moves: expected a whole number from 1 to 60, found "0"',
    ],
    [
      'a file that is not there',
      ['lots', '--names', '/nowhere', '--entropy', '1', '--count', '1'],
      'lots: --names: cannot read "/nowhere"',
    ],
  ])('%s', async (_what, words, complaint) => {
    const { status, out, err } = await tailpiece(words);
    expect(err).toContain(`tailpiece: ${complaint}`);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
    expect([status, out]).toEqual([2, '']);
  });
});

test('help names every command', async () => {
  const { status, out } = await tailpiece(['--help']);
  expect(status).toBe(0);
  for (const name of ['perft', 'prove', 'mark', 'lots']) expect(out).toContain(`\n  ${name} --`);
  for (const name of ['read', 'uci']) expect(out).toContain(`\n  ${name}\n`);
});

test('it runs under npm as the contract says', async () => {
  const run = promisify(execFile);
  const { stdout } = await run('npm', [
    'run',
    '-s',
    'tailpiece',
    '--',
    'perft',
    `--fen=${START_FEN}`,
    '--depth=3',
  ]);
  expect(JSON.parse(stdout)).toMatchObject({ nodes: 8902 });
});
