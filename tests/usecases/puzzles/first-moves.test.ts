import { expect, test } from 'vitest';
import type { BookRow } from '#lib/book/book-row.ts';
import { BENEFIT_OF_DOUBT, createBook } from '#lib/book/solution-book.ts';
import { bookPosition } from '#lib/rules/position-key.ts';
import { judgeFirstMove } from '#lib/usecases/puzzles/first-moves.ts';
import { positionOf } from '../../support/positions.ts';

const start = positionOf('6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1');
const key = { position: bookPosition(start), movesLeft: 1 };
const row = (part: Partial<BookRow> & Pick<BookRow, 'move' | 'verdict' | 'evidence'>): BookRow => ({
  ...key,
  mateIn: null,
  value: null,
  depth: 0,
  nodes: 1,
  replies: [],
  adequate: [],
  evident: null,
  stillWinning: null,
  check: 'passed',
  engineVersion: 'test',
  ...part,
});
const book = createBook([
  row({ move: 'a1a8', verdict: 'holds', mateIn: 1, evidence: { kind: 'budget' } }),
  row({
    move: 'a1a7',
    verdict: 'slips',
    evidence: { kind: 'refutation', reply: 'h7h6', movesLeft: 0, line: [] },
  }),
  row({ move: 'a1a6', verdict: 'slips', evidence: { kind: 'search', line: ['h7h6', 'a6a8'] } }),
]);
const ask = (move: string, of = book) => judgeFirstMove(of, { start, movesLeft: 1, move });

test('[A1] a move that slips carries the reply that defeats it, and how it goes on', () => {
  expect(ask('a1a7')).toEqual({
    move: 'a1a7',
    verdict: 'slips',
    mateIn: null,
    isBenefit: false,
    reply: 'h7h6',
    line: ['h7h6'],
  });
  expect(ask('a1a6')).toMatchObject({ reply: 'h7h6', line: ['h7h6', 'a6a8'] });
});

test('[A1] a move that holds carries its mate and no reply', () => {
  expect(ask('a1a8')).toMatchObject({ verdict: 'holds', mateIn: 1, isBenefit: false, reply: null, line: [] });
});

test('[V0] a legal move that the book does not know is not guessed at', () => {
  expect(ask('a1a2')?.verdict).toBe('unknown');
});

test('a move that cannot be played, or is no move at all, is no question', () => {
  expect(ask('a1b2')).toBeNull();
  expect(ask('<script>')).toBeNull();
});

test('[V8] a ruling stands before the engine’s word', () => {
  const ruled = createBook(book.rows(), [{ ...key, move: 'a1a6', verdict: 'holds', reason: 'seen on air' }]);
  expect(ask('a1a6', ruled)).toMatchObject({ verdict: 'holds', isBenefit: false });
  const given = createBook([], [{ ...key, move: 'a1a6', verdict: 'holds', reason: BENEFIT_OF_DOUBT }]);
  expect(ask('a1a6', given)).toMatchObject({ verdict: 'holds', isBenefit: true });
});
