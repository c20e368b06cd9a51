import { describe, expect, it } from 'vitest';
import { askAll, questionsOf, verifiedFen } from '#lib/book/question.ts';
import { createBook } from '#lib/book/solution-book.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { toRow } from '../support/ruled-book.ts';

const position = 'k7/8/1K6/8/8/8/8/7R w - -';

describe('verifiedFen', () => {
  it('[V0] leaves out the clock under which a position happened to arise', () => {
    expect(verifiedFen(position)).toBe('k7/8/1K6/8/8/8/8/7R w - - 0 1');
  });

  it('[V5] keeps it where it is part of the key', () => {
    expect(verifiedFen(`${position} 83`)).toBe('k7/8/1K6/8/8/8/8/7R w - - 83 1');
  });
});

describe('askAll', () => {
  const start = parseFen(`${position} 0 1`);
  if (!start.ok) throw new Error('position');

  it('asks for every legal move that the book lacks', () => {
    const row = toRow({ position, movesLeft: 1, move: 'h1h8' }, { verdict: 'holds', mateIn: 1 });
    const question = askAll(start.value, 1, createBook([row]));
    expect(question?.moves).not.toContain('h1h8');
    expect(question?.moves).toHaveLength(19);
  });

  it('asks nothing where the book has all', () => {
    const moves = askAll(start.value, 1, createBook([]))?.moves ?? [];
    const rows = moves.map((move) => toRow({ position, movesLeft: 1, move }, { verdict: 'slips' }));
    expect(askAll(start.value, 1, createBook(rows))).toBeNull();
  });
});

describe('questionsOf', () => {
  it('gathers the moves of a position into one question', () => {
    const lack = (move: string, movesLeft: number) => ({
      position,
      movesLeft,
      move,
      fen: verifiedFen(position),
    });
    expect(questionsOf([lack('h1h8', 2), lack('b6c7', 1), lack('h1h7', 2), lack('h1h8', 2)])).toEqual([
      { fen: verifiedFen(position), position, movesLeft: 2, moves: ['h1h8', 'h1h7'] },
      { fen: verifiedFen(position), position, movesLeft: 1, moves: ['b6c7'] },
    ]);
  });
});
