import { describe, expect, it } from 'vitest';
import type { BookRow } from '#lib/book/book-row.ts';
import { firstQuestions, MOST_POSITIONS } from '#lib/book/first-questions.ts';
import { createTree } from '#lib/book/position-tree.ts';
import { readPublishedLines } from '#lib/book/published-lines.ts';
import type { Question } from '#lib/book/question.ts';
import { createBook } from '#lib/book/solution-book.ts';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { type RuledVerdict, toRow } from '../support/ruled-book.ts';

const FEN = '7k/8/8/8/8/8/R7/1R4K1 w - - 0 1';

function termsOf(more: Partial<PuzzleTerms>): PuzzleTerms {
  return { ...DEFAULT_TERMS, fen: FEN, task: { kind: 'mate', moves: 3 }, ...more };
}

/** Asks wave after wave, a rule giving the verdicts. */
function waves(terms: PuzzleTerms, rule: (question: Question, move: string) => RuledVerdict): Question[][] {
  const tree = createTree(terms.fen);
  const published = readPublishedLines(terms, tree);
  const book = createBook([]);
  const asked: Question[][] = [];
  for (;;) {
    const questions = firstQuestions({ terms, book, tree, published });
    if (questions.length === 0) return asked;
    asked.push(questions);
    book.add(
      questions.flatMap((question): BookRow[] =>
        question.moves.map((move) => toRow({ ...question, move }, rule(question, move))),
      ),
    );
  }
}

describe('firstQuestions', () => {
  it('asks for every first move, and for nothing else where none holds', () => {
    const asked = waves(termsOf({}), () => ({ verdict: 'slips' }));
    expect(asked.map((wave) => wave.map(({ moves }) => moves.length))).toEqual([[31]]);
  });

  it('after a key asks for all moves after each adequate reply, until the line is finished', () => {
    const rule = ({ movesLeft }: Question, move: string): RuledVerdict =>
      move === 'a2a6' && movesLeft === 3
        ? { verdict: 'holds', mateIn: 3, adequate: ['h8g8', 'h8h7'] }
        : { verdict: movesLeft === 2 ? 'holds' : 'slips', mateIn: movesLeft === 2 ? 2 : null };
    const asked = waves(termsOf({}), rule);
    expect(asked.map((wave) => wave.map(({ movesLeft }) => movesLeft))).toEqual([[3], [2, 2]]);
  });

  it('[V9] along a published line asks for duals at every solver move that holds', () => {
    const terms = termsOf({ task: { kind: 'win' }, published: ['1.Ra6 Kg8 2.Rb7 Kf8 3.Ra8#'] });
    const asked = waves(terms, () => ({ verdict: 'holds', adequate: ['h8g8'] }));
    expect(asked.map((wave) => wave.length)).toEqual([1, 1, 1]);
    const stopped = waves(terms, ({ position }) => ({
      verdict: position.startsWith('6k1') ? 'slips' : 'holds',
    }));
    expect(stopped).toHaveLength(2);
  });

  it('stays within its bound of positions, however many moves hold', () => {
    const rule = ({ movesLeft }: Question): RuledVerdict => ({
      verdict: 'holds',
      mateIn: movesLeft,
      adequate: ['h8g8', 'h8h7', 'h8g7', 'g8f8', 'g8f7', 'g7f7', 'g7f8', 'h7h6'],
    });
    const asked = waves(termsOf({ task: { kind: 'mate', moves: 3 } }), rule).flat();
    expect(asked.length).toBeLessThanOrEqual(MOST_POSITIONS + 1);
    expect(asked.length).toBeGreaterThan(10);
  });
});
