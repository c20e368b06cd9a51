import { describe, expect, test } from 'vitest';
import { createEngine } from '#lib/engine/create-engine.ts';
import { mateMoves, searchPosition } from '#lib/engine/search-position.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { playUci } from '#lib/rules/uci.ts';

const engine = createEngine();

function at(fen: string): Position {
  const parsed = parseFen(fen);
  if (!parsed.ok) throw new Error(fen);
  return parsed.value;
}

function lastValue(fen: string, budgetNodes = 100_000): number {
  return searchPosition(engine, { position: at(fen), budgetNodes }).depths.at(-1)?.value ?? Number.NaN;
}

test('[V2] mate values say in how many moves', () => {
  expect([29_999, 29_997, -29_998, -30_000, 350, -28_000].map(mateMoves)).toEqual([1, 2, -1, -0, null, null]);
});

describe('[V3] draws have the value of a draw', () => {
  const DRAWN: readonly [string, string][] = [
    ['8/8/8/4k3/8/8/4K3/4B3 w - - 0 1', 'a bishop alone'],
    ['8/8/8/4k3/8/8/4K1N1/6N1 w - - 0 1', 'two knights cannot force mate'],
    ['7k/8/7K/7P/8/8/8/8 w - - 0 1', "a rook's pawn with the king before it"],
    ['8/8/8/8/3k4/8/3P4/3K4 w - - 0 1', 'king and pawn without the opposition'],
    ['7k/8/8/8/8/6KP/8/5B2 w - - 0 1', "bishop of the wrong colour for the rook's pawn"],
    ['6k1/8/6K1/6P1/8/8/8/8 b - - 99 80', 'the fifty-move rule comes with the next move'],
  ];
  for (const [fen, why] of DRAWN) {
    test(`[V3] ${why}: ${fen}`, () => {
      expect(Math.abs(lastValue(fen))).toBeLessThanOrEqual(60);
    });
  }
});

describe('[V2] decided positions have the value of a win', () => {
  const WON: readonly [string, string][] = [
    ['4k3/8/4K3/4P3/8/8/8/8 b - - 0 1', 'king and pawn: Black to move has to give way'],
    ['4k3/8/8/8/8/8/PP6/4K3 w - - 0 1', 'two connected pawns'],
    ['7k/8/8/3K4/8/8/8/3BN3 w - - 0 1', 'bishop and knight'],
    ['k7/8/8/8/8/p7/8/K6R w - - 0 1', 'rook against pawn, king near'],
    ['6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1', 'mate on the back rank'],
  ];
  for (const [fen, why] of WON) {
    test(`[V2] ${why}: ${fen}`, () => {
      const value = lastValue(fen);
      expect(fen.includes(' w ') ? value : -value).toBeGreaterThan(300);
    });
  }
});

test('[V0] values are the same from either side of the board', () => {
  const SAME: readonly [string, string][] = [
    [
      'r1b1kb1r/3q1ppp/pBp1pn2/8/Np3P2/5B2/PPP3PP/R2Q1RK1 w kq - 0 1',
      'r2q1rk1/ppp3pp/5b2/nP3p2/8/PbP1PN2/3Q1PPP/R1B1KB1R b KQ - 0 1',
    ],
  ];
  for (const [white, black] of SAME) {
    const first = searchPosition(engine, { position: at(white), budgetNodes: 50_000, maxDepth: 1 });
    const second = searchPosition(engine, { position: at(black), budgetNodes: 50_000, maxDepth: 1 });
    expect(first.depths[0]?.value).toBe(second.depths[0]?.value);
  }
});

test('[V0] a search keeps to its nodes, and every line can be played', () => {
  const position = at('5rk1/1ppb3p/p1pb4/6q1/3P1p1r/2P1R2P/PP1BQ1P1/5RKN w - - 0 1');
  const result = searchPosition(engine, { position, budgetNodes: 200_000 });
  // The node that finds the budget spent is counted as well.
  expect(result.nodes).toBeLessThanOrEqual(200_002);
  expect(result.depths.map(({ depth }) => depth)).toEqual(result.depths.map((_, i) => i + 1));
  for (const { line } of result.depths) {
    let here: Position | null = position;
    for (const uci of line) here = here === null ? null : playUci(here, uci);
    expect(here, line.join(' ')).not.toBeNull();
  }
});

test('[V0] moves left out are not chosen', () => {
  const position = at('r1bq2rk/pp3pbp/2p1p1pQ/7P/3P4/2PB1N2/PP3PPR/2KR4 w - - 0 1');
  const best = searchPosition(engine, { position, budgetNodes: 20_000 }).depths.at(-1);
  expect(best?.line[0]).toBe('h6h7');
  const second = searchPosition(engine, { position, budgetNodes: 20_000, without: ['h6h7'] }).depths.at(-1);
  expect(second?.line[0]).not.toBe('h6h7');
  expect(mateMoves(second?.value ?? 0)).toBeNull();
});

test('[V2] more nodes are given where the caller wants them, and the depth goes on', () => {
  const position = at('5rk1/1ppb3p/p1pb4/6q1/3P1p1r/2P1R2P/PP1BQ1P1/5RKN w - - 0 1');
  let given = 0;
  const result = searchPosition(engine, {
    position,
    budgetNodes: 30_000,
    moreNodes: () => {
      given += 1;
      return given === 1 ? 90_000 : 0;
    },
  });
  expect(result.nodes).toBeGreaterThanOrEqual(120_000);
  expect(result.nodes).toBeLessThanOrEqual(120_004);
  expect(given).toBe(2);
});
