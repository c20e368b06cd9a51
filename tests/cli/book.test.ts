import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { jsonLines, tailpiece } from '../support/command-line.ts';
import { MATES } from '../support/mates.ts';
import { positionOf } from '../support/positions.ts';

const folder = mkdtempSync(join(tmpdir(), 'book-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function bookOf(puzzle: object, words: readonly string[] = []) {
  const path = join(folder, 'puzzle.json');
  writeFileSync(path, JSON.stringify(puzzle));
  const run = await tailpiece(['book', '--puzzle', path, ...words]);
  const lines = jsonLines(run.out) as Record<string, unknown>[];
  return { ...run, rows: lines.slice(0, -1), last: lines.at(-1) ?? {} };
}

test('[V1] every first move has its row, with evidence and the word of the checker', async () => {
  const { fen } = MATES.morphy;
  const { status, rows, last } = await bookOf({ fen, task: 'mate in 2' });
  expect(status).toBe(0);
  const first = rows.filter(({ position }) => fen.startsWith(String(position)));
  expect(first.map(({ move }) => move).sort()).toEqual(legalMoves(positionOf(fen)).map(writeUci).sort());
  expect(first.find(({ move }) => move === 'a1a6')).toMatchObject({
    verdict: 'holds',
    mateIn: 2,
    check: 'passed',
  });
  expect(first.filter(({ check }) => check !== 'passed')).toEqual([]);
  expect(last.soundness).toMatchObject({
    claim: 'true',
    isUnique: true,
    keys: [{ move: 'a1a6', mateIn: 2 }],
  });
  expect(last.sentences).toContainEqual(expect.stringContaining('Ra6'));
});

test('[A5] a claim that is false is reported as false, and that is no error', async () => {
  const { status, last } = await bookOf({ fen: MATES.morphy.fen, task: 'mate in 1' });
  expect(status).toBe(0);
  expect(last.soundness).toMatchObject({ claim: 'false', keys: [], trueMate: 2 });
});

test('[V2] --budget-nodes is the budget of a verdict in a win', async () => {
  // Own position: the rook can be taken, or left.
  const fen = '3r2k1/5ppp/8/8/8/8/3Q1PPP/6K1 w - - 0 1';
  const { rows, last } = await bookOf({ fen, task: 'win' }, ['--budget-nodes', '20000']);
  const first = rows.filter(({ position }) => fen.startsWith(String(position)));
  expect(first.find(({ move }) => move === 'd2d8')).toMatchObject({ verdict: 'holds' });
  expect(last.soundness).toMatchObject({ claim: 'true' });
  // Rule V2: at most four times the budget where the first search leaves it open.
  for (const { nodes } of first) expect(Number(nodes)).toBeLessThan(5 * 20_000);
});

test('a budget that is no number is refused', async () => {
  const { status, out, err } = await bookOf({ fen: MATES.morphy.fen, task: 'mate in 2' }, [
    '--budget-nodes',
    'many',
  ]);
  expect([status, out]).toEqual([2, '']);
  expect(err).toBe(
    'tailpiece: book: --budget-nodes: expected a whole number from 1 to 10000000000, found "many"\n',
  );
});
