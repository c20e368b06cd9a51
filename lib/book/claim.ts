// What is a solver move asked to do, by the terms of its puzzle? Rules V1 to V3.

import type { Claim } from '#lib/engine/verdict.ts';
import type { PuzzleTerms } from './terms.ts';

/** The claim on a move with so many solver moves left, this one included; `movesLeft` is null outside mate tasks. */
export function claimAt(terms: PuzzleTerms, movesLeft: number | null): Claim {
  switch (terms.task.kind) {
    case 'mate':
      return { task: 'mate', movesLeft: movesLeft ?? terms.task.moves };
    case 'win':
      return { task: 'win', holdBound: terms.winBound, slipBound: terms.slipBound };
    case 'draw':
      return { task: 'draw', holdBound: terms.drawBound, slipBound: terms.drawSlipBound };
  }
}

/** Solver moves left before the first move: N in a mate in N, null in the other tasks. */
export function movesLeftAtStart(terms: PuzzleTerms): number | null {
  return terms.task.kind === 'mate' ? terms.task.moves : null;
}
