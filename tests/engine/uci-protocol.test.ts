import { describe, expect, test } from 'vitest';
import { createEngine } from '#lib/engine/create-engine.ts';
import { createUciSession, type UciSession } from '#lib/engine/uci-protocol.ts';

const engine = createEngine();

/** Says a line and lets the search run to its end. */
function say(session: UciSession, line: string): string[] {
  const lines = session.handle(line);
  for (let slices = 0; session.isSearching() && slices < 200; slices++) lines.push(...session.work());
  return lines;
}

function conversation(...lines: string[]): string[] {
  const session = createUciSession(engine);
  return lines.flatMap((line) => say(session, line));
}

const MATE_IN_TWO = 'position fen r1bq2rk/pp3pbp/2p1p1pQ/7P/3P4/2PB1N2/PP3PPR/2KR4 w - - 0 1';

describe('UCI: greeting and readiness', () => {
  test('[V0] uci names the engine with its version and ends with uciok', () => {
    const lines = conversation('uci');
    expect(lines[0]).toMatch(/^id name Tailpiece \d+\.[0-9a-f]{8}$/);
    expect(lines.at(-1)).toBe('uciok');
  });

  test('isready is answered, also while a search runs', () => {
    const session = createUciSession(engine);
    session.handle('go infinite');
    expect(session.handle('isready')).toEqual(['readyok']);
    expect(session.isSearching()).toBe(true);
    session.handle('stop');
  });
});

describe('UCI: searching', () => {
  test('[V0] go nodes gives the same lines each time and keeps to the number', () => {
    const one = conversation('position startpos moves e2e4 e7e5', 'go nodes 60000');
    const two = conversation('position startpos moves e2e4 e7e5', 'go nodes 60000');
    expect(one).toEqual(two);
    expect(one.at(-1)).toMatch(/^bestmove [a-h][1-8][a-h][1-8]/);
    const nodes = one.flatMap((line) => /nodes (\d+)/.exec(line)?.[1] ?? []).map(Number);
    expect(Math.max(...nodes)).toBeLessThanOrEqual(60_000);
  });

  test('go depth ends at that depth', () => {
    const lines = conversation('go depth 5');
    expect(lines.filter((line) => line.startsWith('info depth'))).toHaveLength(5);
  });

  test('go mate finds the mate and announces its length', () => {
    expect(conversation(MATE_IN_TWO, 'go mate 2')).toEqual([
      expect.stringMatching(/^info depth 3 score mate 2 nodes \d+ pv h6h7$/),
      'bestmove h6h7',
    ]);
  });

  test('go mate with no such mate still names a move', () => {
    expect(conversation('position startpos', 'go mate 1').at(-1)).toMatch(/^bestmove \w{4}/);
  });

  test('multipv gives so many different first moves, best first', () => {
    const lines = conversation('setoption name MultiPV value 3', MATE_IN_TWO, 'go depth 6');
    const last = lines.filter((line) => line.startsWith('info depth 6'));
    expect(last.map((line) => / multipv (\d)/.exec(line)?.[1])).toEqual(['1', '2', '3']);
    expect(last[0]).toContain('score mate 2');
    expect(new Set(last.map((line) => / pv (\w+)/.exec(line)?.[1])).size).toBe(3);
  });

  test('searchmoves leaves every other first move out', () => {
    expect(conversation(MATE_IN_TWO, 'go nodes 20000 searchmoves a2a3 b2b4').at(-1)).toMatch(
      /^bestmove (a2a3|b2b4)/,
    );
  });

  test('infinite goes on until stop, which brings the best move', () => {
    const session = createUciSession(engine);
    session.handle('go infinite');
    for (let slices = 0; slices < 3; slices++) session.work();
    expect(session.isSearching()).toBe(true);
    expect(session.handle('go depth 1')[0]).toMatch(/^info string a search is running/);
    expect(session.handle('stop')).toEqual([expect.stringMatching(/^bestmove \w{4}/)]);
    expect(session.isSearching()).toBe(false);
  });

  test('mate and stalemate on the board have no best move', () => {
    expect(conversation('position fen 7k/6Q1/6K1/8/8/8/8/8 b - - 0 1', 'go depth 2')).toEqual([
      'info depth 0 score mate 0',
      'bestmove (none)',
    ]);
    expect(conversation('position fen 7k/5Q2/6K1/8/8/8/8/8 b - - 0 1', 'go depth 2').at(0)).toBe(
      'info depth 0 score cp 0',
    );
  });

  test('[V5] a position of the game that comes again counts as a draw', () => {
    // Black is a queen behind and has repeated once; his check repeats again.
    const lines = conversation('position fen 7k/8/8/8/8/q7/8/1K5Q w - - 0 1', 'go depth 4');
    expect(lines.at(-1)).toMatch(/^bestmove/);
  });

  test('quit ends a running search and the conversation', () => {
    const session = createUciSession(engine);
    session.handle('go infinite');
    expect(session.handle('quit')).toHaveLength(1);
    expect(session.isOver()).toBe(true);
  });
});

describe('UCI: what cannot be read is answered with what was expected', () => {
  const WRONG: readonly [string, RegExp][] = [
    ['xyzzy', /expected uci, isready/],
    ['position', /expected position startpos or position fen/],
    ['position fen 8/8/8/8 w', /expected a position that can be played/],
    ['position startpos moves e2e5', /expected a legal move/],
    ['go nodes many', /expected a whole number after nodes/],
    ['go nodes -5', /expected a whole number after nodes/],
    ['go perft 5', /expected go with nodes/],
    ['go searchmoves', /expected moves like e2e4/],
    ['setoption name Hash value 64', /expected setoption name MultiPV/],
    ['setoption name MultiPV value 0', /expected a number of lines from 1 to 20/],
    ['x'.repeat(30_000), /expected a line of at most/],
  ];
  for (const [line, expected] of WRONG) {
    test(`${line.slice(0, 50)}`, () => {
      const lines = conversation(line);
      expect(lines).toEqual([expect.stringMatching(/^info string expected /)]);
      expect(lines[0]).toMatch(expected);
      expect(lines[0]?.length).toBeLessThan(300);
    });
  }

  test('an empty line says nothing', () => {
    expect(conversation('', '   ')).toEqual([]);
  });
});
