import { expect, test } from 'vitest';
import type { Proof } from '#lib/checker/proof.ts';
import { proofVariations } from '#lib/puzzle/proof-lines.ts';

// A made-up graph: the shape is what is tested, the checker tests the chess. Node 3 is shared by two replies.
const GRAPH: Proof = {
  v: 1,
  fen: 'made up',
  n: 3,
  nodes: [
    { move: 'd1h1', replies: { b5d7: 1, b5e8: 1, b7d8: 3, b5c6: 4 } },
    { move: 'g6b1', replies: { c5d5: 2 } },
    { move: 'b1b4', replies: {} },
    { move: 'g6d6', replies: {} },
    { move: 'g6c6', replies: {} },
  ],
};

test('replies that meet the same next move stand together, the longest first', () => {
  expect(proofVariations(GRAPH)).toEqual([
    { replies: ['b5d7', 'b5e8'], line: ['g6b1', 'c5d5', 'b1b4'] },
    { replies: ['b5c6'], line: ['g6c6'] },
    { replies: ['b7d8'], line: ['g6d6'] },
  ]);
});

test('a key that mates at once has no variations', () => {
  expect(proofVariations({ v: 1, fen: '', n: 1, nodes: [{ move: 'a1a8', replies: {} }] })).toEqual([]);
});

test('a graph that runs in a circle is our own mistake, and does not run for ever', () => {
  const circle: Proof = {
    v: 1,
    fen: '',
    n: 2,
    nodes: [
      { move: 'a1a2', replies: { h8h7: 1 } },
      { move: 'a2a1', replies: { h7h8: 0 } },
    ],
  };
  expect(() => proofVariations(circle)).toThrow(/circle/);
});
