import { expect, test } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { createJudge } from '#lib/book/verify.ts';
import { createEngine } from '#lib/engine/create-engine.ts';
import { db } from '#lib/store/client.ts';
import { fillBook, type Verify } from '#lib/usecases/puzzles/fill-book.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();
const engine = createEngine();

test('[V1] the book holds a verdict on every first move, and what is in it is not asked again', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
  const book = await fillBook({ puzzleId, terms: MATE_IN_ONE, verify: verifyHere });
  const rows = await db().bookRow.findMany({ where: { puzzleId, movesLeft: 1 } });
  expect(book?.size).toBe(await db().bookRow.count({ where: { puzzleId } }));
  expect(rows.filter((row) => row.verdict === 'holds').map((row) => row.move)).toEqual(['a1a8']);
  const never = () => Promise.reject(new Error('was asked again'));
  expect((await fillBook({ puzzleId, terms: MATE_IN_ONE, verify: never }))?.size).toBe(book?.size);
});

test('where nobody wants it any more, nothing is asked', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
  const never = () => Promise.reject(new Error('was asked'));
  const isWanted = async () => false;
  expect(await fillBook({ puzzleId, terms: MATE_IN_ONE, verify: never, isWanted })).toBeNull();
});

test('[V0] [V2] first moves that are judged apart have the verdicts that they have when judged at once', async () => {
  // Bounds that no move reaches, bounds that one move reaches, and bounds that all but one do.
  const fen = 'n7/k6P/3r4/4N3/2p3R1/K4B2/3Q4/5b2 w - - 0 1';
  for (const [winBound, slipBound] of [
    [4999, 4500],
    [4968, 4818],
    [300, 150],
  ] as const) {
    const terms: PuzzleTerms = {
      ...DEFAULT_TERMS,
      ...{ fen, task: { kind: 'win' }, winBound, slipBound, proofNodes: 20_000, budgetNodes: 2000 },
    };
    const { puzzleId } = await buildPuzzle(await buildShow(), { terms, isPublished: false });
    const jobs: number[] = [];
    const verify: Verify = (question) => {
      jobs.push(question.lacking.length);
      return verifyHere(question);
    };
    const book = await fillBook({ puzzleId, terms, verify });
    expect(Math.min(...jobs)).toBeLessThanOrEqual(4);
    const position = fen.split(' ').slice(0, 4).join(' ');
    const moves =
      book
        ?.rowsAt(position, null)
        .map(({ move }) => move)
        .sort() ?? [];
    const atOnce = createJudge(engine, terms)({ fen, position, movesLeft: null, moves });
    expect(moves.length).toBeGreaterThan(30);
    for (const row of atOnce) {
      const { verdict, value } = book?.find({ position, movesLeft: null, move: row.move }) ?? {};
      expect([row.move, verdict, value]).toEqual([row.move, row.verdict, row.value]);
    }
    expect(await db().bookRow.count({ where: { puzzleId } })).toBe(book?.size);
  }
});
