import { describe, expect, test } from 'vitest';
import { createBook } from '#lib/book/solution-book.ts';
import type { Proof } from '#lib/checker/proof.ts';
import { solutionLines } from '#lib/usecases/puzzles/solution-lines.ts';
import { positionOf } from '../../support/positions.ts';

// F. Healey 1861. Part of the true proof of 1 Rh1, enough to print: the shape is tested here, the chess elsewhere.
const HEALEY = positionOf('8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1');
const PROOF: Proof = {
  v: 1,
  fen: '',
  n: 3,
  nodes: [
    { move: 'd1h1', replies: { b5d7: 1, b5e8: 1, b7d8: 3 } },
    { move: 'g6b1', replies: { b7a5: 2 } },
    { move: 'b1b4', replies: {} },
    { move: 'g6d6', replies: {} },
  ],
};
const nothing = { start: HEALEY, book: createBook([]), movesLeft: 3 };

describe('[A1] the lines that the solution page prints', () => {
  test('the published line grows into the variation that begins like it; the others follow the key', () => {
    expect(
      solutionLines({ ...nothing, published: ['1.Rh1 Bd7 2.Qb1'], keys: ['d1h1'], proof: PROOF }),
    ).toEqual([
      {
        kind: 'published',
        moves: ['d1h1', 'b5d7', 'g6b1', 'b7a5', 'b1b4'],
        from: 0,
        sameAs: ['b5e8'],
      },
      { kind: 'variation', moves: ['d1h1', 'b7d8', 'g6d6'], from: 1, sameAs: [] },
    ]);
  });

  test('a published line in other letters is read like a viewer’s', () => {
    const [main] = solutionLines({ ...nothing, published: ['Th1 Ld7 Db1'], keys: ['d1h1'], proof: null });
    expect(main?.moves).toEqual(['d1h1', 'b5d7', 'g6b1']);
  });

  test('a published line with a gap is shown up to the gap: a page can play only what follows', () => {
    const [main] = solutionLines({ ...nothing, published: ['1.Rh1 2.Qb1'], keys: ['d1h1'], proof: null });
    expect(main?.moves).toEqual(['d1h1']);
  });

  test('without a published line the key stands for itself', () => {
    const lines = solutionLines({ ...nothing, published: [], keys: ['d1h1'], proof: PROOF });
    expect(lines[0]).toEqual({ kind: 'published', moves: ['d1h1'], from: 0, sameAs: [] });
  });

  test('another key is another way', () => {
    const lines = solutionLines({ ...nothing, published: ['Rh1'], keys: ['d1h1', 'g6b1'], proof: null });
    expect(lines.map((line) => [line.kind, line.moves[0]])).toEqual([
      ['published', 'd1h1'],
      ['other-way', 'g6b1'],
    ]);
  });
});
