// Verdicts on single moves in mate tasks.

import { expect, test } from 'vitest';
import { checkProof } from '#lib/checker/check-proof.ts';
import { createEngine } from '#lib/engine/create-engine.ts';
import { judgeMateMoves } from '#lib/engine/judge-mate-moves.ts';
import { proveMate } from '#lib/engine/prove-mate.ts';
import type { Position } from '#lib/rules/position.ts';
import { positionKey } from '#lib/rules/position-key.ts';
import { playUci } from '#lib/rules/uci.ts';
import { positionOf } from '../support/positions.ts';
import { mateAfterEach } from '../support/small-prover.ts';

const engine = createEngine();
const proofNodes = 20_000_000;
/** Frank Healey 1861, via an open problem collection: mate in 3, key Rh1. */
const HEALEY = '8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1';
/** Paul Morphy, New York Clipper 1856 (source from memory): mate in 2, key Ra6. */
const MORPHY = 'kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1';

/** Common practice, no source: rook and king against king, mates in 2 and 3. */
const ENDING = '7k/8/5K2/8/8/8/8/R7 w - - 0 1';

const judge = (fen: string, moves: readonly string[] | 'all', movesLeft: number) =>
  judgeMateMoves(engine, { fen, moves, movesLeft, proofNodes });

test('[V1] a move that holds has a proof that the checker passes, and its exact length', () => {
  const [key] = judge(HEALEY, ['d1h1'], 3);
  expect(key?.verdict).toBe('holds');
  expect(key?.mateIn).toBe(3);
  if (key?.evidence.kind !== 'proof') throw new Error('no proof');
  expect(key.evidence.proof.n).toBe(3);
  expect(checkProof(key.evidence.proof).status).toBe('passed');
});

test('[V1] the four lists of the prover and the verdicts say the same of every move', () => {
  for (const [fen, moves] of [
    [MORPHY, 2],
    [ENDING, 2],
    [HEALEY, 3],
  ] as const) {
    const report = proveMate(engine, { fen, moves, proofNodes, withSlower: true, withProof: false });
    const verdicts = judge(fen, 'all', moves);
    const listed = (word: string) => verdicts.filter(({ verdict }) => verdict === word);
    expect(listed('holds').map(({ move, mateIn }) => ({ uci: move, mateIn }))).toEqual(report.keys);
    expect(listed('slower').map(({ move, mateIn }) => ({ uci: move, mateIn }))).toEqual(report.slower);
    expect(listed('slips').map(({ move }) => move)).toEqual(report.refuted.map(({ uci }) => uci));
  }
});

test('[V1] a move with mate in exactly one more is slower, with a proof of that length', () => {
  const slower = judge(ENDING, 'all', 2).filter(({ verdict }) => verdict === 'slower');
  expect(slower.length).toBeGreaterThan(0);
  for (const { evidence, mateIn } of slower) {
    expect(mateIn).toBe(3);
    if (evidence.kind !== 'proof') throw new Error('no proof');
    expect(checkProof(evidence.proof).status).toBe('passed');
    expect(evidence.proof.n).toBe(3);
  }
});

test('[O2] every reply has its exact length, the second implementation agrees, and the longest are adequate', () => {
  const [key] = judge(MORPHY, ['a1a6'], 2);
  const after = playUci(positionOf(MORPHY), 'a1a6');
  if (!key || !after) throw new Error('Ra6 is legal');
  expect(key.replies.map(({ uci }) => uci).sort()).toEqual([...mateAfterEach(after, 0).keys()].sort());
  for (const { uci, mateIn } of key.replies) {
    const next = playUci(after, uci);
    if (!next) throw new Error(uci);
    const shortest = [...mateAfterEach(next, 1).values()].filter((length) => length !== null);
    expect(Math.min(...shortest)).toBe(mateIn);
  }
  expect(key.adequate).toEqual(key.replies.filter(({ mateIn }) => mateIn === 1).map(({ uci }) => uci));
});

test('[O2] where some replies last longer than others, only those are adequate', () => {
  const [key] = judge(HEALEY, ['d1h1'], 3);
  const lengths = new Set(key?.replies.map(({ mateIn }) => mateIn));
  expect(lengths.size).toBeGreaterThan(1);
  expect(key?.replies[0]?.mateIn).toBe(2);
  expect(key?.adequate.length).toBeLessThan(key?.replies.length ?? 0);
});

test('[V1] a checkmate never slips, needs no reply, and mates in 1 whatever was left', () => {
  const [mate] = judge('6k1/5ppp/8/8/8/8/8/K3R3 w - - 0 1', ['e1e8'], 4);
  expect(mate).toMatchObject({ verdict: 'holds', mateIn: 1, replies: [], adequate: [] });
});

test('[V1] a move that slips names the reply after which no mate follows; stalemate names none', () => {
  const [slip] = judge(MORPHY, ['c8d8'], 2);
  expect(slip?.verdict).toBe('slips');
  expect(slip?.evidence).toMatchObject({ kind: 'refutation', movesLeft: 1 });
  const [stalemate] = judge('7k/8/8/6Q1/8/8/8/K7 w - - 0 1', ['g5g6'], 1);
  expect(stalemate?.evidence).toEqual({ kind: 'refutation', reply: null, movesLeft: 0, line: [] });
});

test('[V1] out of budget is unclear; out of it only for one move more, slips', () => {
  const tight = (nodes: number) =>
    judgeMateMoves(engine, { fen: HEALEY, moves: ['d1e1'], movesLeft: 3, proofNodes: nodes })[0];
  expect(tight(5)).toMatchObject({ verdict: 'unclear', evidence: { kind: 'budget' } });
  expect(tight(proofNodes)?.verdict).not.toBe('unclear');
  const enough = judgeMateMoves(engine, { fen: HEALEY, moves: ['g6g7'], movesLeft: 3, proofNodes });
  expect(enough[0]?.verdict).toBe('slips');
  const used = judgeMateMoves(engine, { fen: HEALEY, moves: ['g6g7'], movesLeft: 3, proofNodes: 1_200 });
  expect(used[0]?.verdict).toBe('slips');
});

test('[V0] a verdict does not depend on what is asked beside it', () => {
  const alone = judge(HEALEY, ['d1h1'], 3);
  const together = judge(HEALEY, 'all', 3).filter(({ move }) => move === 'd1h1');
  expect(together).toEqual(alone);
});

test('[V6] the same position reached by another order of moves has the same verdicts', () => {
  const one = judge('7k/8/5K2/8/8/8/8/R7 w - - 4 30', 'all', 3);
  const other = judge('7k/8/5K2/8/8/8/8/R7 w - - 11 72', 'all', 3);
  const bare = (verdicts: typeof one) => verdicts.map(({ evidence, ...rest }) => [rest, evidence.kind]);
  expect(bare(other)).toEqual(bare(one));
});

test('[V0] stopped in between, the finished verdicts stay', () => {
  let finished = 0;
  const verdicts = judgeMateMoves(engine, {
    fen: 'n1rb4/1p3p1p/1p6/1R5K/8/p3p1PN/1PP1R3/N6k w - - 0 1',
    moves: ['g3g4', 'b2b4', 'h3g5'],
    movesLeft: 5,
    proofNodes,
    onProgress: ({ done }) => {
      finished = done;
    },
    shouldStop: () => finished >= 1,
  });
  expect(verdicts.map(({ move }) => move)).toEqual(['g3g4']);
});

test('[T1] the proof of a slow first move may come back to the first position: no repetition, mate all the same', () => {
  // Mate in 2; after 1 Kd3 the shortest way leads back to c3.
  const fen = '8/8/8/8/5Q2/2K5/8/k7 w - - 0 1';
  const [slow] = judge(fen, ['c3d3'], 4);
  expect(slow).toMatchObject({ verdict: 'holds', mateIn: 4 });
  if (slow?.evidence.kind !== 'proof') throw new Error('no proof');
  const { proof } = slow.evidence;
  expect(checkProof(proof).status).toBe('passed');
  const first = positionKey(positionOf(fen));
  const isBack = (position: Position, index: number): boolean => {
    if (index > 0 && positionKey(position) === first) return true;
    const { move = '', replies = {} } = proof.nodes[index] ?? {};
    const next = playUci(position, move);
    return Object.entries(replies).some(([uci, child]) => {
      const after = next && playUci(next, uci);
      return after !== null && isBack(after, child);
    });
  };
  expect(isBack(positionOf(fen), 0)).toBe(true);
});
