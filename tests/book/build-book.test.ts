import { describe, expect, it } from 'vitest';
import { buildBook, failedRows } from '#lib/book/build-book.ts';
import { firstQuestions } from '#lib/book/first-questions.ts';
import { createTree } from '#lib/book/position-tree.ts';
import { readPublishedLines } from '#lib/book/published-lines.ts';
import { createBook, type SolutionBook } from '#lib/book/solution-book.ts';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { createJudge } from '#lib/book/verify.ts';
import { createEngine } from '#lib/engine/create-engine.ts';

const engine = createEngine({ hashMiB: 1 });
const terms: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: '7k/8/8/8/8/8/R7/1R4K1 w - - 0 1',
  task: { kind: 'mate', moves: 3 },
  published: ['1.Ra6 Kg8 2.Rb7 Kf8 3.Ra8#'],
};

describe('buildBook', () => {
  it('fills a book until no question is left', () => {
    const book = buildBook({ terms, judge: createJudge(engine, terms) });
    const tree = createTree(terms.fen);
    const published = readPublishedLines(terms, tree);
    expect(firstQuestions({ terms, book, tree, published })).toEqual([]);
    expect(failedRows(book.rows())).toEqual([]);
  });

  it('goes on where it was stopped, and comes to the same book', () => {
    let asked = 0;
    const stopAfterTwo = () => {
      asked += 1;
      return asked > 2;
    };
    const judge = createJudge(engine, terms);
    const begun = buildBook({ terms, judge, shouldStop: stopAfterTwo });
    const partly = begun.size;
    const resumed = buildBook({ terms, judge, book: createBook(begun.rows()) });
    const whole = buildBook({ terms, judge });
    expect(partly).toBeLessThan(whole.size);
    const told = (book: SolutionBook) =>
      book
        .rows()
        .map(({ position, movesLeft, move, verdict, mateIn }) =>
          [position, movesLeft, move, verdict, mateIn].join(' '),
        )
        .sort();
    expect(told(resumed)).toEqual(told(whole));
  });

  it('ends where the judge gives nothing', () => {
    expect(buildBook({ terms, judge: () => [] }).size).toBe(0);
  });
});

describe('failedRows', () => {
  it('[T1] finds the alarms', () => {
    const [row] = createJudge(
      engine,
      terms,
    )({ fen: terms.fen, position: 'x', movesLeft: 3, moves: ['a2a6'] });
    if (row === undefined) throw new Error('no row');
    expect(failedRows([row, { ...row, check: 'failed' }])).toHaveLength(1);
  });
});
