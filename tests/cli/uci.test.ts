import { once } from 'node:events';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { askUciProgram } from '#lib/machine/uci-program.ts';
import { findUci } from '#lib/rules/uci.ts';
import { startTailpiece, tailpiece } from '../support/command-line.ts';
import { MATES } from '../support/mates.ts';
import { accepted, positionOf, START_FEN } from '../support/positions.ts';

const SELF = { path: process.execPath, args: [join(import.meta.dirname, '../../lib/cli/main.ts'), 'uci'] };

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
    const child = startTailpiece(['uci']);
    let out = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
    });
    const until = async (pattern: RegExp): Promise<void> => {
      while (!pattern.test(out)) await once(child.stdout, 'data');
    };
    child.stdin.write('go infinite\n');
    await until(/info depth 3 /);
    child.stdin.write('isready\n');
    await until(/readyok/);
    expect(out).not.toContain('bestmove');
    child.stdin.write('stop\n');
    await until(/bestmove \S+/);
    child.stdin.write('quit\n');
    expect(await once(child, 'close')).toEqual([0, null]);
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
