import { describe, expect, it } from 'vitest';
import type { BookRow } from '#lib/book/book-row.ts';
import { buildBook } from '#lib/book/build-book.ts';
import { createBook } from '#lib/book/solution-book.ts';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { createJudge } from '#lib/book/verify.ts';
import { writeSoundnessReport } from '#lib/book/write-soundness-report.ts';
import { createEngine } from '#lib/engine/create-engine.ts';
import { toRow } from '../support/ruled-book.ts';

const engine = createEngine({ hashMiB: 1 });
const WIN = 'q3k3/8/8/3N4/8/8/5PPP/6K1 w - - 0 1';

function mate(fen: string, moves: number, published: string[] = []): PuzzleTerms {
  return { ...DEFAULT_TERMS, fen, task: { kind: 'mate', moves }, published };
}

function reportOn(terms: PuzzleTerms) {
  return writeSoundnessReport(terms, buildBook({ terms, judge: createJudge(engine, terms) }));
}

/** A book of first moves with values alone. */
function valued(
  values: Readonly<Record<string, readonly [number, BookRow['verdict'], boolean?]>>,
  more: Partial<PuzzleTerms> = {},
) {
  const terms: PuzzleTerms = { ...DEFAULT_TERMS, fen: WIN, task: { kind: 'win' }, ...more };
  const position = 'q3k3/8/8/3N4/8/8/5PPP/6K1 w - -';
  const rows = Object.entries(values).map(([move, [value, verdict, evident = false]]) => ({
    ...toRow({ position, movesLeft: null, move }, { verdict, evident }),
    value,
  }));
  return writeSoundnessReport(terms, createBook(rows)).values;
}

describe('writeSoundnessReport', () => {
  it("[V1] Morphy's mate in two: true, one key, every try with its refutation replayed", () => {
    const report = reportOn(mate('kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1', 2));
    expect(report).toMatchObject({ claim: 'true', isUnique: true, shorter: null, trueMate: null });
    expect(report.keys.map(({ move, mateIn }) => [move, mateIn])).toEqual([['a1a6', 2]]);
    // Both checks and captures tempt most.
    expect(report.tries[0]).toEqual({ move: 'a1a7', line: ['b8a7'], check: 'passed' });
    expect(report.checks).toMatchObject({ failed: 0, notCheckable: 0 });
  });

  it('[A5] a mate in two set as a mate in three is quicker than asked', () => {
    expect(reportOn(mate('7k/8/8/8/8/8/R7/1R4K1 w - - 0 1', 3))).toMatchObject({ claim: 'true', shorter: 2 });
  });

  it('[A5] a mate in two set as a mate in one is false, and the true task is offered', () => {
    expect(reportOn(mate('kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1', 1))).toMatchObject({
      claim: 'false',
      trueMate: 2,
      keys: [],
    });
  });

  it('[V9] names duals along the published line, but not other mates on the last move', () => {
    const report = reportOn(mate('7k/8/8/8/8/8/R7/1R4K1 w - - 0 1', 3, ['1.Ra6 Kg8 2.Rb7 Kf8 3.Ra8#']));
    expect(report.duals).toEqual([{ before: ['a2a6', 'h8g8'], published: 'b1b7', others: ['a6a7'] }]);
  });

  it('[V7] lists the values of all first moves in a row and proposes a bound in the widest gap', () => {
    const values = valued({
      d5c7: [620, 'holds'],
      d5f6: [260, 'slips'],
      d5e3: [200, 'slips'],
      g1f1: [-400, 'slips'],
    });
    expect(values?.row.map(({ value }) => value)).toEqual([620, 260, 200, -400]);
    expect([values?.holding, values?.hasTooMany]).toEqual([1, false]);
    // The bound of 300 lies in the gap between 620 and 260 already; the one below 200 would be under 100.
    expect(values?.proposedBound).toBeNull();
  });

  it('[V7] proposes a bound where the present one lies in no gap, and warns above three', () => {
    const values = valued({
      d5c7: [900, 'holds'],
      d5f6: [500, 'holds'],
      d5e3: [450, 'holds'],
      g1f1: [400, 'holds'],
      g1h1: [350, 'holds'],
    });
    expect([values?.hasTooMany, values?.proposedBound]).toEqual([true, 700]);
  });

  it('[V7] names moves that win evidently at once where the published one does not', () => {
    const moves = { d5c7: [620, 'holds', true], d5f6: [900, 'holds', false] } as const;
    expect(valued(moves, { published: ['1.Nf6+'] })?.simpler).toEqual(['d5c7']);
    expect(valued(moves, { published: ['1.Nc7+'] })?.simpler).toEqual([]);
  });

  it('[O1] a diagram that is decided already needs a published line or a pinned number', () => {
    const terms: PuzzleTerms = {
      ...DEFAULT_TERMS,
      fen: '4k3/8/8/4K3/4P3/8/8/8 w - - 0 1',
      task: { kind: 'win' },
    };
    expect(reportOn(terms)).toMatchObject({ isDecidedInDiagram: true, needsEnd: true });
    expect(reportOn({ ...terms, solverMoves: 3 })).toMatchObject({
      isDecidedInDiagram: true,
      needsEnd: false,
    });
  });

  it('an unclear move without one that holds leaves the claim unclear', () => {
    const terms: PuzzleTerms = { ...DEFAULT_TERMS, fen: WIN, task: { kind: 'win' } };
    const position = 'q3k3/8/8/3N4/8/8/5PPP/6K1 w - -';
    const row = toRow({ position, movesLeft: null, move: 'd5c7' }, { verdict: 'unclear' });
    expect(writeSoundnessReport(terms, createBook([row]))).toMatchObject({
      claim: 'unclear',
      unclear: ['d5c7'],
    });
  });
});
