// The mate prover against published problems, and its proofs against the checker.

import { describe, expect, test } from 'vitest';
import { checkProof } from '#lib/checker/check-proof.ts';
import { checkRefutation } from '#lib/checker/check-refutation.ts';
import { createEngine } from '#lib/engine/create-engine.ts';
import { type MateReport, proveMate } from '#lib/engine/prove-mate.ts';
import { type MateCase, mateCases } from '../support/mate-cases.ts';

const engine = createEngine();
const proofNodes = 20_000_000;
const cases = mateCases().filter(({ id }) => !id.startsWith('long'));
// Those of five moves that take longest are left to `npm run bench -- mates`.
const chosen = cases.filter(({ id, moves }) => moves < 5 || /[05]$/.test(id));

/** Samuel Loyd 1861: mate in 5. */
const LOYD = 'n1rb4/1p3p1p/1p6/1R5K/8/p3p1PN/1PP1R3/N6k w - - 0 1';
/** Mate in 5 with three keys; composer not recorded. */
const CROWDED = '1r3n2/2pB1pq1/1bR3p1/N2NR2b/KP1kpp1r/1p2p3/1PP2Q1n/8 w - - 0 1';

const prove = (
  fen: string,
  moves: number,
  more?: { withSlower?: boolean; withProof?: boolean },
): MateReport =>
  proveMate(engine, {
    fen,
    moves,
    proofNodes,
    withSlower: more?.withSlower ?? false,
    withProof: more?.withProof ?? false,
  });

function faultsOf({ id, fen, moves, keys, isUnique }: MateCase): string[] {
  const report = prove(fen, moves, { withProof: true });
  const faults: string[] = [];
  const found = report.keys.map(({ uci }) => uci).join(' ');
  if (found !== keys.join(' ')) faults.push(`keys ${found}, not ${keys.join(' ')}`);
  if ((report.keys.length === 1) !== isUnique) faults.push('uniqueness');
  if (report.mateIn !== moves || report.keys.some(({ mateIn }) => mateIn !== moves)) faults.push('length');
  if (!report.isComplete) faults.push(`unfinished ${report.unfinished}`);
  const check = report.proof && checkProof(report.proof);
  if (check?.status !== 'passed') faults.push(`proof ${JSON.stringify(check)}`);
  for (const { uci, by } of report.refuted) {
    // Every refutation is replayed; exhausting it takes the checker a while, so only short ones here.
    const refutation = { fen, move: uci, reply: by, movesLeft: moves - 1 };
    const replayed = checkRefutation(refutation, { maxPositions: moves === 2 ? 3_000 : 300 });
    if (replayed.status === 'failed')
      faults.push(`refutation ${uci} ${by}: ${JSON.stringify(replayed.reason)}`);
  }
  return faults.map((fault) => `${id}: ${fault}`);
}

describe('[V1] published problems', () => {
  test('every key is found with its exact length, and every other move is refuted', () => {
    expect(cases.length).toBe(186);
    expect(chosen.length).toBeGreaterThan(110);
    expect(chosen.flatMap(faultsOf)).toEqual([]);
  });

  test('a mate in 5 with a quiet key has one key (Samuel Loyd 1861)', () => {
    const report = prove(LOYD, 5);
    expect(report.keys).toEqual([{ uci: 'b2b4', mateIn: 5 }]);
  });

  test('a crowded mate in 5 has three keys', () => {
    const report = prove(CROWDED, 5);
    expect(report.keys.map(({ uci }) => uci)).toEqual(['c6c5', 'd7g4', 'f2h4']);
  });
});

describe('[V1] every legal first move stands in exactly one list', () => {
  /** Paul Morphy, New York Clipper 1856 (source from memory): Ra6 mates in 2. */
  const morphy = 'kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1';
  const ending = '7k/8/5K2/8/8/8/8/R7 w - - 0 1';

  test('with the question of one move more: key, slower and refuted together are all legal moves', () => {
    for (const fen of [morphy, ending]) {
      const report = prove(fen, 2, { withSlower: true });
      const all = [...report.keys, ...report.slower, ...report.refuted].map(({ uci }) => uci);
      expect(new Set(all).size).toBe(all.length);
      expect(all.length).toBe(prove(fen, 0).refuted.length);
      // What is slower for mate in 2 are the keys of exactly three moves for mate in 3.
      const longer = prove(fen, 3);
      expect(longer.keys.filter(({ mateIn }) => mateIn === 3)).toEqual(report.slower);
      expect(longer.keys.filter(({ mateIn }) => mateIn < 3)).toEqual(report.keys);
    }
    expect(prove(ending, 2, { withSlower: true }).slower.length).toBeGreaterThan(5);
  });

  test('a move that stalemates is refuted with no reply', () => {
    // Queen to f7 or g6 leaves the king without a move.
    const report = prove('7k/8/8/6Q1/8/8/8/K7 w - - 0 1', 1);
    expect(report.holds).toBe(false);
    const stalemate = report.refuted.find(({ uci }) => uci === 'g5g6');
    expect(stalemate?.by).toBe(null);
    expect(report.refuted.filter(({ by }) => by === null).map(({ uci }) => uci)).toEqual(['g5g6']);
  });

  test('in a mate in 1 every other move is refuted by any legal reply', () => {
    const report = prove('6k1/5ppp/8/8/8/8/8/K3R3 w - - 0 1', 1);
    expect(report.keys).toEqual([{ uci: 'e1e8', mateIn: 1 }]);
    expect(report.refuted.every(({ by }) => by !== null)).toBe(true);
  });

  test('a move after which too few men are left draws by itself', () => {
    const report = prove('8/8/8/8/8/3k4/8/Kr6 w - - 0 1', 2);
    expect(report.refuted).toContainEqual({ uci: 'a1b1', by: null });
    expect(report.refuted.filter(({ by }) => by === null).length).toBe(1);
  });

  test('a key longer than the shortest is a key with its own length', () => {
    // Rook and king against king: several lengths of mate within 3.
    const report = prove('7k/8/5K2/8/8/8/8/R7 w - - 0 1', 3);
    expect(report.mateIn).toBe(2);
    expect(new Set(report.keys.map(({ mateIn }) => mateIn))).toEqual(new Set([2, 3]));
  });
});

describe('[V5] the half-move clock', () => {
  test('below 80 it does not count', () => {
    const clocked = 'kbK5/pp6/1P6/8/8/8/8/R7 w - - 79 60';
    expect(prove(clocked, 2).keys).toEqual([{ uci: 'a1a6', mateIn: 2 }]);
  });

  test('a mate that comes after 50 moves without capture or pawn move is none', () => {
    // Quiet key, quiet reply: mate by the fourth ply would need a clock of at most 96 before it.
    const quiet = (clock: number) => `7k/8/5K2/8/8/8/8/R7 w - - ${clock} 90`;
    expect(prove(quiet(96), 2).holds).toBe(true);
    expect(prove(quiet(98), 2).holds).toBe(false);
    const full = prove('7k/8/5K2/8/8/8/8/6Q1 w - - 99 90', 2).refuted;
    expect(full, 'the move itself draws').toContainEqual({ uci: 'f6f7', by: null });
    // Mate on the board comes before any claim (FIDE Laws 5.1.1).
    expect(prove('7k/8/6K1/8/8/8/8/R7 w - - 99 90', 1).keys).toEqual([{ uci: 'a1a8', mateIn: 1 }]);
  });
});

describe('[V0] repeatable', () => {
  const fen = '8/3B4/1K1p4/2pNk3/2bn1b2/3p4/5N2/Q7 w - - 0 1';

  test('the same question has the same answer to the node, after other work and in another engine', () => {
    const first = prove(fen, 4, { withSlower: true, withProof: true });
    prove('1rB5/2Q1p1n1/3N2n1/2Pp1RN1/3k1b2/pP1p1Rp1/1P6/2B3Kb w - - 0 1', 2, { withSlower: true });
    expect(prove(fen, 4, { withSlower: true, withProof: true })).toEqual(first);
    const other = createEngine();
    const again = proveMate(other, { fen, moves: 4, proofNodes, withSlower: true, withProof: true });
    expect(again).toEqual(first);
  });

  test('[V1] out of the budget is unfinished, never a guess', () => {
    const report = proveMate(engine, { fen, moves: 4, proofNodes: 200, withSlower: true, withProof: true });
    expect(report.isComplete).toBe(false);
    expect(report.unfinished).toContain('a1a8');
    const listed =
      report.keys.length + report.slower.length + report.refuted.length + report.unfinished.length;
    expect(listed).toBe(prove(fen, 1).refuted.length);
  });

  test('an interruption keeps the first moves that are finished', () => {
    let isFarEnough = false;
    const report = proveMate(engine, {
      fen: CROWDED,
      moves: 5,
      proofNodes,
      withSlower: false,
      withProof: false,
      onProgress: ({ stage, done, total }) => {
        isFarEnough = stage === 'refutations' && done > total / 2;
      },
      shouldStop: () => isFarEnough,
    });
    expect(report.isComplete).toBe(false);
    expect(report.unfinished.length).toBeGreaterThan(10);
    expect(report.refuted.length).toBeGreaterThan(10);
    const whole = prove(CROWDED, 5);
    expect(whole.isComplete).toBe(true);
    for (const finished of report.refuted) expect(whole.refuted).toContainEqual(finished);
  });

  test('progress counts first moves and nodes, and never goes back within a stage', () => {
    const seen: { stage: string; done: number; nodes: number }[] = [];
    proveMate(engine, {
      fen,
      moves: 4,
      proofNodes,
      withSlower: false,
      withProof: false,
      onProgress: (progress) => seen.push(progress),
    });
    expect(seen.map(({ stage }) => stage)).toContain('refutations');
    const nodes = seen.map((one) => one.nodes);
    expect(nodes).toEqual([...nodes].sort((a, b) => a - b));
  });
});
