import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { describe, expect, onTestFinished, test } from 'vitest';
import { askUciProgram, endForsakenPrograms, type UciReason } from '#lib/machine/uci-program.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { accepted, positionOf, refused, START_FEN } from '../support/positions.ts';
import { isRunning } from '../support/running-process.ts';

import { oddProgramIn } from '../support/uci-programs/program-file.ts';

const PROGRAM = join(import.meta.dirname, '../support/uci-programs/odd-program.mjs');
const start = positionOf(START_FEN);

/** Asks the odd program with one fault. */
function ask(fault: string, { budgetMs = 5000, extra = '' } = {}) {
  const program = { path: process.execPath, args: [PROGRAM, fault, extra] };
  return askUciProgram(program, { position: start, nodes: 1000, budgetMs });
}

describe('what a well-behaved program says', () => {
  test('its name, move, line, depth and value come out', async () => {
    expect(accepted(await ask('none'))).toEqual({
      name: 'Odd One',
      move: 'e2e4',
      line: ['e2e4', 'e7e5', 'g1f3'],
      depth: 9,
      centipawns: 31,
      mateIn: null,
    });
  });

  test('a mate comes out as a mate', async () => {
    expect(accepted(await ask('mates'))).toMatchObject({ centipawns: null, mateIn: 2 });
  });

  test('other lines and mere bounds are not its value', async () => {
    expect(accepted(await ask('other-lines'))).toMatchObject({ centipawns: 31, line: ['e2e4'] });
  });

  test('one that thinks until it is told to stop is told at the budget', async () => {
    const begun = performance.now();
    expect(accepted(await ask('needs-stop', { budgetMs: 1000 })).move).toBe('d2d4');
    expect(performance.now() - begun).toBeGreaterThan(990);
    expect(performance.now() - begun).toBeLessThan(1700);
  });
});

describe('what it may see and be sent', () => {
  test('no settings of ours reach it, and no shell reads its arguments', async () => {
    process.env.TAILPIECE_SECRET_FOR_TEST = 'do not tell';
    const { name } = accepted(await ask('tells', { extra: '; echo $HOME > /dev/null' }));
    delete process.env.TAILPIECE_SECRET_FOR_TEST;
    expect(name).toContain('"PATH"');
    expect(name).not.toContain('do not tell');
  });

  test('[A29] a path with spaces and signs of a shell is a path, and nothing of it is carried out', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'uci a;b $(touch harm) `touch harm` & '));
    const path = oddProgramIn(folder, 'none');
    expect(
      accepted(await askUciProgram({ path, args: [] }, { position: start, nodes: 1, budgetMs: 5000 })).move,
    ).toBe('e2e4');
    expect(readdirSync(folder)).toEqual(['odd-none']);
    expect(existsSync(join(tmpdir(), 'harm'))).toBe(false);
    rmSync(folder, { recursive: true });
  });

  test('[A29] arguments are passed on as they are, line breaks and all', async () => {
    const odd = 'one\nquit\nsetoption name "x" ; $HOME';
    expect(accepted(await ask('tells-arguments', { extra: odd })).name).toBe(
      JSON.stringify([odd]).slice(0, 100),
    );
  });

  test('[A29] of a hostile FEN only what we write ourselves is sent, each command on one line', async () => {
    const board = '4k3/8/8/8/8/8/4P3/4K3';
    for (const hostile of [
      `${board} w - - 0 1\nquit`,
      `${board} w - - 0 1 setoption name Hash value 9`,
      'startpos\nquit',
    ]) {
      expect(parseFen(hostile).ok).toBe(false);
    }
    const folder = mkdtempSync(join(tmpdir(), 'uci-'));
    const file = join(folder, 'lines');
    const odd = parseFen(`\t${board}\n w  - -\r\n 0 1\n`);
    const position = odd.ok ? odd.value : positionOf(`${board} w - - 0 1`);
    const program = { path: process.execPath, args: [PROGRAM, 'records', file] };
    await askUciProgram(program, { position, nodes: 77, budgetMs: 5000 });
    const lines = readFileSync(file, 'utf8');
    rmSync(folder, { recursive: true });
    expect(lines).toBe(`uci\nisready\nucinewgame\nposition fen ${board} w - - 0 1\ngo nodes 77\nquit\n`);
  });

  test('the position is sent as we write it', async () => {
    const program = { path: process.execPath, args: [PROGRAM, 'none'] };
    const odd = positionOf('  4k3/8/8/8/8/8/4P3/4K3   w - - 0 1 ');
    expect(refused(await askUciProgram(program, { position: odd, nodes: 1, budgetMs: 5000 }))).toEqual({
      code: 'illegal-line',
      found: 'e7e5',
    });
  });
});

describe('a program that misbehaves is refused, and says nothing that is believed', () => {
  const cases: [string, string, UciReason][] = [
    ['it cannot be started', '', { code: 'cannot-start', why: 'spawn /nowhere/program ENOENT' }],
    ['it dies at once', 'dies', { code: 'ended', stage: 'uci', status: 3 }],
    ['it dies while thinking', 'dies-thinking', { code: 'ended', stage: 'go', status: 0 }],
    ['it never says a word', 'mute', { code: 'no-answer', stage: 'uci', budgetMs: 1000 }],
    ['it never says uciok', 'no-uciok', { code: 'no-answer', stage: 'uci', budgetMs: 1000 }],
    ['it is never ready', 'no-readyok', { code: 'no-answer', stage: 'isready', budgetMs: 1000 }],
    ['it never answers', 'never-answers', { code: 'no-answer', stage: 'go', budgetMs: 1000 }],
    [
      'it answers when nobody waits any more',
      'answers-late',
      { code: 'no-answer', stage: 'go', budgetMs: 1000 },
    ],
    ['it prints without line end', 'no-end-of-line', { code: 'too-much-output', stage: 'uci' }],
    ['it names an illegal move', 'illegal-move', { code: 'illegal-move', found: 'e2e5' }],
    ['it expects an illegal line', 'illegal-line', { code: 'illegal-line', found: 'e2e4' }],
    ['it says that there is no move', 'no-move', { code: 'illegal-move', found: '(none)' }],
    ['it answers in notation', 'notation', { code: 'illegal-move', found: 'Nf3' }],
    ['a move with more behind it', 'hostile-move', { code: 'illegal-move', found: 'e2e4;rm' }],
    ['bytes', 'binary', { code: 'illegal-move', found: '\u0000\u0001' }],
    ['a bare bestmove', 'bare-word', { code: 'illegal-move', found: '' }],
  ];
  test.each(cases)('%s', async (_what, fault, reason) => {
    const budgetMs = reason.code === 'no-answer' ? 1000 : 5000;
    const begun = performance.now();
    const result =
      fault === ''
        ? await askUciProgram({ path: '/nowhere/program', args: [] }, { position: start, nodes: 1, budgetMs })
        : await ask(fault, { budgetMs });
    expect(refused(result)).toEqual(reason);
    // Killed at 1.2 times the budget; the rest is the time that the system takes.
    expect(performance.now() - begun).toBeLessThan(budgetMs * 1.2 + 300);
  });

  test('it never stops talking', async () => {
    const reason = refused(await ask('never-ends-talking'));
    expect(reason.code).toBe('too-much-output');
  });
});

describe('[F10] what it prints costs us no memory', () => {
  test.each(['a-gigabyte', 'empty-lines', 'never-ends-talking'])('%s', async (fault) => {
    const before = process.memoryUsage.rss();
    let most = before;
    const looking = setInterval(() => {
      most = Math.max(most, process.memoryUsage.rss());
    }, 5);
    const reason = refused(await ask(fault));
    clearInterval(looking);
    expect(reason.code).toBe('too-much-output');
    expect(most - before).toBeLessThan(50_000_000);
  });
});

describe('it never outlives its question', () => {
  test('one that ignores quit is killed, and its answer stands', async () => {
    expect(accepted(await ask('ignores-quit')).move).toBe('e2e4');
  });

  test.each(['leaves-a-child', 'leaves-a-runaway'])(
    '[F10] what it has started is killed with it: %s',
    async (fault) => {
      const folder = mkdtempSync(join(tmpdir(), 'uci-'));
      const file = join(folder, 'pids');
      expect(accepted(await ask(fault, { extra: file })).move).toBe('e2e4');
      const pids = readFileSync(file, 'utf8').split(' ').map(Number);
      rmSync(folder, { recursive: true });
      await wait(100);
      expect(pids).toHaveLength(2);
      expect(pids.filter(isRunning)).toEqual([]);
    },
  );

  test('[F10] what a killed worker was asking is ended by the next, and nothing of a living one', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'uci-'));
    const owners = [0, 1].map((n) => {
      const file = join(folder, String(n));
      const owner = spawn(process.execPath, [join(import.meta.dirname, '../support/uci-owner.ts'), file]);
      return { owner, file };
    });
    onTestFinished(() => {
      for (const { owner } of owners) owner.kill('SIGKILL');
      endForsakenPrograms();
    });
    const pids: number[][] = [];
    for (const { file } of owners) {
      await expect
        .poll(() => existsSync(file) && readFileSync(file, 'utf8'), { timeout: 10_000 })
        .toMatch(/ \d+$/);
      pids.push(readFileSync(file, 'utf8').split(' ').map(Number));
    }
    const [dead = [], living = []] = pids;
    owners[0]?.owner.kill('SIGKILL');
    await expect.poll(() => owners[0]?.owner.signalCode).toBe('SIGKILL');
    // A worker that starts elsewhere on this machine may have ended them already: that is what it is for.
    endForsakenPrograms();
    await expect.poll(() => dead.filter(isRunning)).toEqual([]);
    expect(living.filter(isRunning)).toEqual(living);
    owners[1]?.owner.kill('SIGKILL');
    await expect.poll(() => owners[1]?.owner.signalCode).toBe('SIGKILL');
    endForsakenPrograms();
    await expect.poll(() => living.filter(isRunning)).toEqual([]);
    rmSync(folder, { recursive: true });
  });
});
