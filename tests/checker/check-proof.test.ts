import { describe, expect, test } from 'vitest';
import { checkProof, MOST_POSITIONS, type ProofFaultCode } from '#lib/checker/check-proof.ts';
import type { Proof, ProofNode } from '#lib/checker/proof.ts';
import { createRandom } from '#lib/kit/random.ts';
import { MATES, proofOf } from '../support/mates.ts';

function nodeOf(proof: Proof, index: number): ProofNode {
  const node = proof.nodes[index];
  if (node === undefined) throw new Error(`No node ${index}`);
  return node;
}

/** The proof with one node changed. */
function withNode(proof: Proof, index: number, change: Partial<ProofNode>): Proof {
  return { ...proof, nodes: proof.nodes.map((node, at) => (at === index ? { ...node, ...change } : node)) };
}

/** The proof with one reply of a node led elsewhere. */
function withReply(proof: Proof, index: number, reply: string, to: number): Proof {
  const node = nodeOf(proof, index);
  if (node.replies[reply] === undefined) throw new Error(`No reply ${reply}`);
  return withNode(proof, index, { replies: { ...node.replies, [reply]: to } });
}

function withoutReply(proof: Proof, index: number, reply: string): Proof {
  const node = nodeOf(proof, index);
  if (node.replies[reply] === undefined) throw new Error(`No reply ${reply}`);
  const replies = Object.fromEntries(Object.entries(node.replies).filter(([uci]) => uci !== reply));
  return withNode(proof, index, { replies });
}

/** Common practice, no source: king, rook and pawn against king, mate by Rh1. */
const ROOK_MATE: Proof = {
  v: 1,
  fen: '8/5K1k/8/6P1/8/8/8/R7 w - - 0 1',
  n: 1,
  nodes: [{ move: 'a1h1', replies: {} }],
};
/** The rook goes to a2 and back, and only then comes Rh1: mate in three all the same (rule V1). */
const detour: Proof = {
  v: 1,
  fen: ROOK_MATE.fen,
  n: 3,
  nodes: [
    { move: 'a1a2', replies: { h7h8: 1 } },
    { move: 'a2a1', replies: { h8h7: 2 } },
    { move: 'a1h1', replies: {} },
  ],
};

describe('[T1] a proof that is right passes', () => {
  test.each(Object.keys(MATES) as (keyof typeof MATES)[])('%s', (name) => {
    const proof = proofOf(name);
    expect(checkProof(proof)).toMatchObject({ status: 'passed', reason: null });
  });

  test('a bound larger than needed is no lie: mate follows in at most so many moves', () => {
    expect(checkProof({ ...proofOf('morphy'), n: 5 }).status).toBe('passed');
  });
});

describe('[T1] a proof with one thing changed fails for that reason', () => {
  type Fault = { code: ProofFaultCode; node: number; path: string[]; move: string | null };
  const morphy = proofOf('morphy');
  const loyd = proofOf('loyd');
  const leaf = nodeOf(loyd, 0).replies.d8d5 ?? -1;
  const cases: [string, Proof, Proof, Fault][] = [
    [
      'missing defence: one legal reply is left out',
      loyd,
      withoutReply(loyd, 0, 'd8d5'),
      { code: 'missing-defence', node: 0, path: ['h5a5'], move: 'd8d5' },
    ],
    [
      'illegal move: the queen jumps like a knight',
      loyd,
      withNode(loyd, 0, { move: 'h5g7' }),
      { code: 'illegal-move', node: 0, path: [], move: 'h5g7' },
    ],
    [
      'illegal reply: a defence that is none',
      morphy,
      withNode(morphy, 0, { replies: { ...nodeOf(morphy, 0).replies, b7b4: 1 } }),
      { code: 'illegal-move', node: 0, path: ['a1a6'], move: 'b7b4' },
    ],
    [
      'no mate at the leaf: the last move is another',
      loyd,
      withNode(loyd, leaf, { move: 'a5a4' }),
      { code: 'no-mate-at-leaf', node: leaf, path: ['h5a5', 'd8d5', 'a5a4'], move: null },
    ],
    [
      'wrong side: a man of the defender moves',
      loyd,
      withNode(loyd, 0, { move: 'd8d7' }),
      { code: 'wrong-side', node: 0, path: [], move: 'd8d7' },
    ],
    [
      'wrong side: the other side is to move',
      morphy,
      { ...morphy, fen: MATES.morphy.fen.replace(' w ', ' b ') },
      { code: 'wrong-side', node: 0, path: [], move: 'a1a6' },
    ],
    [
      'stalemate taken for mate',
      proofOf('queenMate'),
      withNode(proofOf('queenMate'), 0, { move: 'g6f7' }),
      { code: 'stalemate-at-leaf', node: 0, path: ['g6f7'], move: null },
    ],
    [
      'castling through check: the pawn e4 stands on e2',
      proofOf('ebert'),
      { ...proofOf('ebert'), fen: '8/2Pp4/8/N1P5/8/P1k5/4p3/R3K3 w Q - 0 1' },
      { code: 'castling-through-check', node: 0, path: [], move: 'e1c1' },
    ],
    [
      'bad en passant: no double step went before',
      proofOf('amelung'),
      { ...proofOf('amelung'), fen: MATES.amelung.fen.replace(' g6 ', ' - ') },
      { code: 'bad-en-passant', node: 0, path: [], move: 'h5g6' },
    ],
    [
      'repetition: where the rook is back, it goes away again',
      detour,
      withReply(detour, 1, 'h8h7', 0),
      { code: 'repetition', node: 0, path: ['a1a2', 'h7h8', 'a2a1', 'h8h7'], move: null },
    ],
    [
      'wrong position: a reply leads to the start, where other men stand',
      loyd,
      withReply(loyd, 0, 'd8d5', 0),
      { code: 'wrong-position', node: 0, path: ['h5a5', 'd8d5'], move: null },
    ],
    [
      'wrong move count: one move fewer is claimed',
      loyd,
      { ...loyd, n: 1 },
      {
        code: 'wrong-move-count',
        node: 1,
        path: ['h5a5', Object.keys(nodeOf(loyd, 0).replies)[0] ?? ''],
        move: null,
      },
    ],
    [
      'truncated: the last node is gone',
      loyd,
      { ...loyd, nodes: loyd.nodes.slice(0, -1) },
      {
        code: 'truncated',
        node: loyd.nodes.length - 1,
        path: ['h5a5', Object.keys(nodeOf(loyd, 0).replies).at(-1) ?? ''],
        move: null,
      },
    ],
    [
      'bad position: the defender stands in check',
      morphy,
      { ...morphy, fen: 'kbK5/1p6/QP6/8/8/8/8/R7 w - - 0 1' },
      { code: 'bad-position', node: 0, path: [], move: null },
    ],
  ];
  test.each(cases)('%s', (_what, right, wrong, fault) => {
    expect(checkProof(right).status).toBe('passed');
    expect(checkProof(wrong)).toMatchObject({ status: 'failed', reason: fault });
  });

  test('[T1] a position that comes again under another node is a detour, not a circle', () => {
    expect(checkProof(ROOK_MATE).status).toBe('passed');
    expect(checkProof(detour).status).toBe('passed');
    expect(checkProof({ ...detour, n: 2 }).reason?.code).toBe('wrong-move-count');
  });

  test('[T1] a node that stands for two positions is refused', () => {
    const [first = '', second = ''] = Object.keys(nodeOf(loyd, 0).replies).filter((uci) =>
      uci.startsWith('f8'),
    );
    const wrong = withReply(loyd, 0, second, nodeOf(loyd, 0).replies[first] ?? -1);
    expect(checkProof(wrong).reason).toMatchObject({ code: 'wrong-position', path: ['h5a5', second] });
  });
});

describe('[T1] any one reply left out is found, wherever it is', () => {
  test.each(['morphy', 'loyd', 'ebert', 'schwarz'] as const)('%s', (name) => {
    const proof = proofOf(name);
    let left = 0;
    for (const [index, { replies }] of proof.nodes.entries()) {
      for (const reply of Object.keys(replies)) {
        const expected = Object.keys(replies).length === 1 ? 'no-mate-at-leaf' : 'missing-defence';
        expect(checkProof(withoutReply(proof, index, reply)).reason?.code).toBe(expected);
        left += 1;
      }
    }
    expect(left).toBeGreaterThanOrEqual(4);
  });
});

test('[T1] 300 proofs with one number changed never pass unless they say the same (seed 41)', () => {
  const random = createRandom(41);
  const proof = proofOf('ebert');
  const edges = proof.nodes.flatMap(({ replies }, index) =>
    Object.entries(replies).map(([uci, to]) => ({ index, uci, to })),
  );
  for (let count = 0; count < 300; count += 1) {
    const { index, uci, to } = random.pick(edges);
    const other = random.int(proof.nodes.length + 2);
    const { status } = checkProof(withReply(proof, index, uci, other));
    expect(status, `${index} ${uci} -> ${other}`).toBe(other === to ? 'passed' : 'failed');
  }
});

test('[T1] the bound of positions is exact, and beyond it nothing is called wrong', () => {
  const proof = proofOf('loyd');
  const { positions } = checkProof(proof);
  expect(checkProof(proof, { maxPositions: positions }).status).toBe('passed');
  expect(checkProof(proof, { maxPositions: positions - 1 })).toEqual({
    status: 'too-large',
    reason: null,
    positions: positions - 1,
  });
  expect(MOST_POSITIONS).toBe(200_000);
});

test('[T1] [V5] a proof whose mate comes after fifty moves without capture or pawn move proves nothing', () => {
  const proof = (clock: number): Proof => ({
    v: 1,
    fen: `7k/8/5K2/8/8/8/8/6Q1 w - - ${clock} 80`,
    n: 2,
    nodes: [
      { move: 'f6f7', replies: { h8h7: 1 } },
      { move: 'g1h1', replies: {} },
    ],
  });
  expect(checkProof(proof(97)).status).toBe('passed');
  expect(checkProof(proof(98)).reason).toMatchObject({ code: 'fifty-moves', node: 1 });
  expect(checkProof(proof(99)).reason).toMatchObject({ code: 'fifty-moves', node: 0 });
  const mate: Proof = {
    v: 1,
    fen: '7k/8/5K2/8/8/8/8/6Q1 w - - 100 80',
    n: 1,
    nodes: [{ move: 'g1g7', replies: {} }],
  };
  expect(checkProof(mate).status, 'a checkmate never slips').toBe('passed');
});
