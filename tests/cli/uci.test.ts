import { once } from 'node:events';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, test } from 'vitest';
import { askUciProgram } from '#lib/machine/uci-program.ts';
import { findUci } from '#lib/rules/uci.ts';
import { startTailpiece, tailpiece } from '../support/command-line.ts';
import { MATES } from '../support/mates.ts';
import { accepted, positionOf, START_FEN } from '../support/positions.ts';

const SELF = { path: process.execPath, args: [join(import.meta.dirname, '../../lib/cli/main.mjs'), 'uci'] };

const bestMoves = (out: string): string[] => out.split('\n').filter((line) => line.startsWith('bestmove'));

/** A running engine that is spoken to line by line. */
function talk() {
  const child = startTailpiece(['uci']);
  let out = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    out += text;
  });
  return {
    tell: (...lines: string[]) => child.stdin.write(`${lines.join('\n')}\n`),
    async until(pattern: RegExp): Promise<string> {
      while (!pattern.test(out)) await once(child.stdout, 'data');
      return out;
    },
    said: () => out,
    hasEnded: once(child, 'close'),
  };
}

describe('driven as any UCI program is', () => {
  test('it gives its name, a legal move, a line and a value', async () => {
    const opinion = accepted(
      await askUciProgram(SELF, { position: positionOf(START_FEN), nodes: 50_000, budgetMs: 20_000 }),
    );
    expect(opinion.name).toMatch(/^Tailpiece \d+\.[0-9a-f]+$/);
    expect(findUci(positionOf(START_FEN), opinion.move)).not.toBeNull();
    expect(opinion.line[0]).toBe(opinion.move);
    expect(Math.abs(opinion.centipawns ?? 1000)).toBeLessThan(150);
  });

  test('it sees a mate in two (Samuel Loyd, Organ Pipes, 1859)', async () => {
    const opinion = accepted(
      await askUciProgram(SELF, { position: positionOf(MATES.loyd.fen), nodes: 500_000, budgetMs: 20_000 }),
    );
    expect(opinion).toMatchObject({ move: 'h5a5', mateIn: 2 });
  });

  test('[V0] the same question has the same answer in another process', async () => {
    const ask = () =>
      askUciProgram(SELF, { position: positionOf(MATES.morphy.fen), nodes: 20_000, budgetMs: 20_000 });
    expect(accepted(await ask())).toEqual(accepted(await ask()));
  });
});

describe('the conversation', () => {
  test('a search is finished where the input ends', async () => {
    const { status, out, err } = await tailpiece(['uci'], `position startpos moves e2e4\ngo nodes 20000\n`);
    expect([status, err]).toEqual([0, '']);
    expect(out.trimEnd().split('\n').at(-1)).toMatch(/^bestmove [a-h][1-8][a-h][1-8]/);
  });

  test('a search without end is stopped where the input ends', async () => {
    const { status, out } = await tailpiece(['uci'], 'go infinite\n');
    expect(status).toBe(0);
    expect(out).toMatch(/bestmove \S+/);
  });

  test('stop and isready are heard while it thinks, quit ends it', async () => {
    const { tell, until, hasEnded } = talk();
    tell('go infinite');
    await until(/info depth 3 /);
    tell('isready');
    expect(await until(/readyok/)).not.toContain('bestmove');
    tell('stop');
    await until(/bestmove \S+/);
    tell('quit');
    expect(await hasEnded).toEqual([0, null]);
  });

  // Each of these would think for minutes: what is measured is how soon it lets go.
  const LONG: readonly [string, string][] = [
    ['go infinite', 'position startpos'],
    ['go nodes 900000000', 'position startpos'],
    ['go depth 70', 'position startpos'],
    ['go mate 12', 'position startpos moves e2e4 e7e5'],
  ];
  for (const [go, position] of LONG) {
    test(`${go}: readyok in its midst, one best move after stop, and again after the next go`, async () => {
      const { tell, until, hasEnded, said } = talk();
      tell('uci', 'setoption name MultiPV value 2', 'ucinewgame', position, 'isready');
      await until(/readyok/);
      tell(go);
      await wait(700);
      const begun = performance.now();
      tell('isready');
      await until(/readyok[\s\S]*readyok/);
      expect(bestMoves(said())).toHaveLength(0);
      tell('stop');
      await until(/bestmove [a-h][1-8][a-h][1-8]/);
      // 32,768 nodes take some 30 ms; the rest is a busy machine.
      expect(performance.now() - begun).toBeLessThan(1500);
      tell('stop', 'go depth 3', 'isready');
      await until(/bestmove[\s\S]*bestmove \S+/);
      tell('quit');
      expect(await hasEnded).toEqual([0, null]);
      expect(bestMoves(said())).toHaveLength(2);
      expect(said()).toContain(' multipv 2 ');
    });
  }

  test('quit in the midst of a search ends it at once, though nobody closes its input', async () => {
    const { tell, until, hasEnded, said } = talk();
    tell('go infinite');
    await until(/info depth 3 /);
    const begun = performance.now();
    tell('quit');
    expect(await hasEnded).toEqual([0, null]);
    expect(performance.now() - begun).toBeLessThan(1500);
    expect(bestMoves(said())).toHaveLength(1);
  });

  test('commands that come all at once are done in their order, one best move for each go', async () => {
    const { out } = await tailpiece(
      ['uci'],
      'position fen 7k/6Q1/6K1/8/8/8/8/8 b - - 0 1\ngo depth 3\nposition startpos\ngo depth 2\nposition fen 8/8\ngo depth 2\n',
    );
    expect(bestMoves(out)).toEqual([
      'bestmove 0000',
      expect.stringMatching(/^bestmove [a-h]\w{3}/),
      'bestmove 0000',
    ]);
  });

  test('lines that are no commands are answered with what was expected, and it goes on', async () => {
    const { out } = await tailpiece(
      ['uci'],
      'hello\nposition fen 8/8\nposition startpos moves e2e5\nisready\n',
    );
    const lines = out.trimEnd().split('\n');
    expect(lines).toHaveLength(4);
    for (const line of lines.slice(0, 3)) expect(line).toMatch(/^info string expected /);
    expect(lines[3]).toBe('readyok');
  });
});
