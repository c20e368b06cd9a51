import { describe, expect, test } from 'vitest';
import { createEngine } from '#lib/engine/create-engine.ts';
import { createUciSession } from '#lib/engine/uci-protocol.ts';

const engine = createEngine();

/** A conversation whose other side says `meanwhile` at the n-th time that a search listens, one line each time. */
function talk(meanwhile: readonly string[] = [], from = 1) {
  const said: string[] = [];
  const rest = [...meanwhile];
  let heard = 0;
  const session = createUciSession(engine, {
    say: (line) => said.push(line),
    listen() {
      heard += 1;
      const next = heard < from ? undefined : rest.shift();
      if (next !== undefined) session.handle(next);
    },
  });
  const tell = (...lines: string[]): string[] => {
    const before = said.length;
    for (const line of lines) {
      session.handle(line);
      session.work();
    }
    return said.slice(before);
  };
  return { session, said, tell };
}

function conversation(...lines: string[]): string[] {
  return talk().tell(...lines);
}

const bestMoves = (lines: readonly string[]): string[] => lines.filter((line) => line.startsWith('bestmove'));

const MATE_IN_TWO = 'position fen r1bq2rk/pp3pbp/2p1p1pQ/7P/3P4/2PB1N2/PP3PPR/2KR4 w - - 0 1';

describe('UCI: greeting and readiness', () => {
  test('[V0] uci names the engine with its version and ends with uciok', () => {
    const lines = conversation('uci');
    expect(lines[0]).toMatch(/^id name Tailpiece \d+\.[0-9a-f]{8}$/);
    expect(lines.at(-1)).toBe('uciok');
  });

  test('isready is answered, also while a search runs', () => {
    const { said, tell } = talk(['isready', 'isready', 'stop']);
    expect(tell('isready')).toEqual(['readyok']);
    tell('go infinite');
    expect(said.filter((line) => line === 'readyok')).toHaveLength(3);
    expect(said.at(-1)).toMatch(/^bestmove /);
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
    expect(conversation('position startpos', 'go mate 1 nodes 20000').at(-1)).toMatch(/^bestmove \w{4}/);
  });

  test('multipv gives so many different first moves, best first', () => {
    const lines = conversation('setoption name MultiPV value 3', MATE_IN_TWO, 'go depth 6');
    const last = lines.filter((line) => line.startsWith('info depth 6'));
    expect(last.map((line) => / multipv (\d)/.exec(line)?.[1])).toEqual(['1', '2', '3']);
    expect(last[0]).toContain('score mate 2');
    expect(new Set(last.map((line) => / pv (\w+)/.exec(line)?.[1])).size).toBe(3);
  });

  test('[V1] a mate that the search sees is called one only where the prover confirms it within the nodes', () => {
    // Queen and rook: the search sees a mate in 6 at 95,000 nodes, whose proof takes more than the rest.
    const many = conversation('position fen 8/8/3k4/8/8/8/8/K4QR1 w - - 0 1', 'go nodes 100000');
    expect(many.join('\n')).not.toContain('score mate');
    expect(many.at(-2)).toMatch(/^info depth 5 multipv 1 score cp 5000 nodes \d{5} pv f1f4 /);
    const nodes = many.flatMap((line) => /nodes (\d+)/.exec(line)?.[1] ?? []).map(Number);
    expect(Math.max(...nodes)).toBeLessThanOrEqual(100_000);
    expect(bestMoves(many)).toHaveLength(1);
    const few = conversation('position fen 8/8/8/8/2k5/8/8/KQQ5 b - - 0 1', 'go nodes 20000');
    expect(few.at(-2)).toContain('score mate -3');
    expect(conversation('position fen 7k/5Q2/6K1/8/8/8/8/8 w - - 0 1', 'go depth 1')[0]).toContain(
      'score mate 1',
    );
  });

  test('stop is heard while a mate is proved, and brings one best move', () => {
    for (const from of [1, 2, 3, 5, 8, 13]) {
      const { said, tell, session } = talk(['stop'], from);
      tell('position fen 8/8/3k4/8/8/8/8/K4QR1 w - - 0 1', 'go infinite');
      expect(bestMoves(said)).toHaveLength(1);
      expect(said.at(-1)).toMatch(/^bestmove \w{4}/);
      expect(session.isSearching()).toBe(false);
    }
  });

  test('go mate keeps to its nodes together with the search for another move', () => {
    const nodes = conversation('go mate 5 nodes 40000').flatMap(
      (line) => /nodes (\d+)/.exec(line)?.[1] ?? [],
    );
    // What the prover has used is counted first.
    expect(Number(nodes[0])).toBeGreaterThan(30_000);
    expect(Math.max(...nodes.map(Number))).toBeLessThanOrEqual(40_000);
  });

  test('searchmoves leaves every other first move out', () => {
    expect(conversation(MATE_IN_TWO, 'go nodes 20000 searchmoves a2a3 b2b4').at(-1)).toMatch(
      /^bestmove (a2a3|b2b4)/,
    );
  });

  test('infinite goes on until stop, which brings the best move', () => {
    const { said, tell, session } = talk(['stop'], 5);
    tell('go infinite');
    expect(said.at(-1)).toMatch(/^bestmove \w{4}/);
    expect(bestMoves(said)).toHaveLength(1);
    expect(session.isSearching()).toBe(false);
  });

  test('an infinite search that has come to its end keeps its best move until stop', () => {
    const { said, tell, session } = talk();
    tell('position fen 7k/5Q2/6K1/8/8/8/8/8 w - - 0 1', 'go infinite');
    expect(bestMoves(said)).toEqual([]);
    expect(session.isSearching()).toBe(true);
    expect(tell('isready')).toEqual(['readyok']);
    expect(tell('stop')).toEqual([expect.stringMatching(/^bestmove f7(g7|h7|f8)/)]);
    expect(session.isSearching()).toBe(false);
    expect(tell('stop')).toEqual([]);
  });

  test('a mate of any length that is looked for is given up at stop, and a move is named all the same', () => {
    const { said, tell } = talk(['isready', 'stop']);
    tell('go mate 9');
    expect(said[0]).toBe('readyok');
    expect(bestMoves(said)).toEqual([expect.stringMatching(/^bestmove [a-h][1-8][a-h][1-8]/)]);
  });

  test('go mate keeps to its nodes, and to the first moves that are named', () => {
    expect(bestMoves(conversation(MATE_IN_TWO, 'go mate 2 nodes 20000 searchmoves a2a3'))).toEqual([
      expect.stringMatching(/^bestmove a2a3/),
    ]);
    const nodes = conversation('go mate 5 nodes 40000').flatMap(
      (line) => /nodes (\d+)/.exec(line)?.[1] ?? [],
    );
    expect(Math.max(...nodes.map(Number))).toBeLessThanOrEqual(40_000);
  });

  test('what is said during a search waits behind it, and every go has its own best move', () => {
    const { said, tell, session } = talk([
      'setoption name MultiPV value 2',
      MATE_IN_TWO,
      'go depth 3',
      'isready',
    ]);
    tell('go nodes 300000');
    expect(bestMoves(said)).toHaveLength(2);
    expect(bestMoves(said)[1]).toMatch(/^bestmove h6h7/);
    expect(said.indexOf('readyok')).toBeLessThan(said.indexOf(bestMoves(said)[0] ?? ''));
    expect(said.some((line) => line.startsWith('info depth 3 multipv 2'))).toBe(true);
    expect(session.isSearching()).toBe(false);
  });

  test('stop ends the search at hand and those that were asked for before it', () => {
    const { said, tell } = talk(['go infinite', 'stop']);
    tell('go infinite');
    expect(bestMoves(said)).toHaveLength(2);
    expect(bestMoves(tell('go depth 2'))).toHaveLength(1);
  });

  test('mate and stalemate on the board have no best move: the null move of the protocol', () => {
    expect(conversation('position fen 7k/6Q1/6K1/8/8/8/8/8 b - - 0 1', 'go depth 2')).toEqual([
      'info depth 0 score mate 0',
      'bestmove 0000',
    ]);
    expect(conversation('position fen 7k/5Q2/6K1/8/8/8/8/8 b - - 0 1', 'go mate 3')).toEqual([
      'info depth 0 score cp 0',
      'bestmove 0000',
    ]);
  });

  test('ucinewgame goes back to the first position', () => {
    const moves = bestMoves(conversation(MATE_IN_TWO, 'ucinewgame', 'go depth 1'));
    expect(moves).toEqual(bestMoves(conversation('position startpos', 'go depth 1')));
  });

  test('a game longer than the kernel remembers is played through', () => {
    const shuffle = ['g1f3', 'g8f6', 'f3g1', 'f6g8'];
    const moves = Array.from({ length: 120 }, () => shuffle).flat();
    const long = ['e2e4', 'e7e5', ...moves, 'd2d4', 'd7d5', ...moves, 'a2a4', 'a7a5', ...moves];
    expect(long.length).toBeGreaterThan(1400);
    expect(bestMoves(conversation(`position startpos moves ${long.join(' ')}`, 'go depth 4'))).toHaveLength(
      1,
    );
    const endless = [...moves, ...moves].join(' ');
    expect(conversation(`position startpos moves ${endless}`)[0]).toMatch(
      /at most 500 moves without a capture/,
    );
  });

  test('[V5] a position of the game that comes again counts as a draw', () => {
    // Black is a queen behind and has repeated once; his check repeats again.
    const lines = conversation('position fen 7k/8/8/8/8/q7/8/1K5Q w - - 0 1', 'go depth 4');
    expect(lines.at(-1)).toMatch(/^bestmove/);
  });

  test('quit ends a running search and the conversation', () => {
    const { session, said, tell } = talk(['go depth 1', 'quit']);
    tell('go infinite');
    expect(bestMoves(said)).toHaveLength(1);
    expect(session.isOver()).toBe(true);
  });

  test('where the lines end, what waits is done and an infinite search is stopped', () => {
    const { session, said, tell } = talk();
    session.handle('go depth 2');
    session.handle('go infinite');
    session.end();
    expect(session.isOver()).toBe(false);
    session.work();
    expect(bestMoves(said)).toHaveLength(2);
    expect(session.isOver()).toBe(true);
    expect(tell()).toEqual([]);
  });
});

describe('UCI: what cannot be read is answered with what was expected', () => {
  const WRONG: readonly [string, RegExp][] = [
    ['xyzzy', /expected uci, isready/],
    ['position', /expected position startpos or position fen/],
    ['position fen 8/8/8/8 w', /expected a position that can be played/],
    ['position startpos moves e2e5', /expected a legal move/],
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

  const PARTLY: readonly [string, RegExp][] = [
    ['go nodes many', /expected a whole number after nodes/],
    ['go nodes -5', /expected a whole number after nodes/],
    ['go depth 2 perft', /expected go with nodes/],
    ['go nodes infinite depth 2', /expected a whole number after nodes/],
    ['go depth 2 searchmoves', /expected moves like e2e4/],
  ];
  for (const [line, expected] of PARTLY) {
    test(`${line}: the rest is obeyed, and whoever waits for a best move gets one`, () => {
      const { said, session } = talk();
      session.handle(line);
      session.end();
      session.work();
      expect(said[0]).toMatch(expected);
      expect(bestMoves(said)).toHaveLength(1);
    });
  }

  test('after a position that cannot be read no move of another position is named', () => {
    for (const wrong of ['position fen 8/8/8/8 w', 'position startpos moves e2e4 e2e4']) {
      const lines = conversation(wrong, 'go depth 2');
      expect(lines.slice(-2)).toEqual([
        expect.stringMatching(/^info string expected a position that can be played before go/),
        'bestmove 0000',
      ]);
      expect(conversation(wrong, 'position startpos', 'go depth 1').at(-1)).toMatch(/^bestmove \w{4}/);
    }
  });

  test('unknown words before a command are passed over', () => {
    expect(conversation('joho isready')).toEqual(['readyok']);
  });

  test('what a stranger writes cannot begin a line of its own', () => {
    const lines = conversation('hello\rbestmove e2e4\u2028\u0007');
    expect(lines).toHaveLength(1);
    expect(lines[0]).not.toMatch(/\p{C}/u);
  });

  test('an empty line says nothing', () => {
    expect(conversation('', '   ')).toEqual([]);
  });
});
