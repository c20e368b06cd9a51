import { expect, test } from 'vitest';
import { createEngine } from '#lib/engine/create-engine.ts';
import { findMate } from '#lib/engine/find-mate.ts';

const engine = createEngine({ hashMiB: 1 });

test('[V1] the shortest mate is found with its first move', () => {
  // Paul Morphy, New York Clipper 1856 (source from memory): mate in 2, key Ra6.
  const found = findMate(engine, { fen: 'kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1', bound: 5, proofNodes: 1e6 });
  expect(found).toMatchObject({ mateIn: 2, move: 'a1a6', isComplete: true });
});

test('[V1] no mate within the bound is said to be none; out of budget is said to be unfinished', () => {
  const fen = 'kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1';
  expect(findMate(engine, { fen, bound: 1, proofNodes: 1e6 })).toMatchObject({
    mateIn: null,
    isComplete: true,
  });
  const loyd = 'n1rb4/1p3p1p/1p6/1R5K/8/p3p1PN/1PP1R3/N6k w - - 0 1';
  expect(findMate(engine, { fen: loyd, bound: 5, proofNodes: 100 })).toMatchObject({
    isComplete: false,
    mateIn: null,
  });
});
