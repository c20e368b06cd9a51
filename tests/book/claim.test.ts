import { describe, expect, it } from 'vitest';
import { claimAt, movesLeftAtStart } from '#lib/book/claim.ts';
import { DEFAULT_TERMS, type PuzzleTerms, type Task } from '#lib/book/terms.ts';

function termsOf(task: Task): PuzzleTerms {
  return { ...DEFAULT_TERMS, fen: '7k/8/5K2/8/8/8/6Q1/8 w - - 0 1', task };
}

describe('claimAt', () => {
  it('[V1] a mate in N asks for mate in the moves that are left', () => {
    expect(claimAt(termsOf({ kind: 'mate', moves: 3 }), 2)).toEqual({ task: 'mate', movesLeft: 2 });
    expect(movesLeftAtStart(termsOf({ kind: 'mate', moves: 3 }))).toBe(3);
  });

  it('[V2] a win asks by the bounds of the win', () => {
    expect(claimAt(termsOf({ kind: 'win' }), null)).toEqual({ task: 'win', holdBound: 300, slipBound: 150 });
    expect(movesLeftAtStart(termsOf({ kind: 'win' }))).toBeNull();
  });

  it('[V3] a draw asks by the bounds of the draw', () => {
    expect(claimAt(termsOf({ kind: 'draw' }), null)).toEqual({
      task: 'draw',
      holdBound: -75,
      slipBound: -150,
    });
  });
});
