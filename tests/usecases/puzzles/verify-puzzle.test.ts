import { describe, expect, test } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { sleep } from '#lib/machine/clock.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { loadProgress } from '#lib/store/progress.ts';
import { holdMarking } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle, replaceTerms } from '#lib/store/puzzles.ts';
import type { Verify } from '#lib/usecases/puzzles/fill-book.ts';
import { verifyPuzzle } from '#lib/usecases/puzzles/verify-puzzle.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

// Thomas R. Dawson, Illustrated London News, 1913: 1.Rf1.
const DAWSON: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: 'nk6/brpp2p1/brp4p/1p6/8/8/8/4K2R w - - 0 1',
  task: { kind: 'mate', moves: 2 },
  published: ['1.Rf1'],
};

async function draft(terms: PuzzleTerms) {
  return (await buildPuzzle(await buildShow(), { terms, isPublished: false })).puzzleId;
}

describe('verification', () => {
  test('[V1] a true claim: the published key and no other holds, and the book is kept', async () => {
    const puzzleId = await draft(DAWSON);
    await verifyPuzzle({ puzzleId, verify: verifyHere });
    const puzzle = await loadPuzzle(db(), { id: puzzleId });
    expect(puzzle?.claim).toBe('true');
    expect(puzzle?.verifiedAt).not.toBeNull();
    const keys = await db().bookRow.findMany({ where: { puzzleId, movesLeft: 2, verdict: 'holds' } });
    expect(keys.map((row) => [row.move, row.checkStatus])).toEqual([['h1f1', 'passed']]);
    expect(keys[0]?.proofId).not.toBeNull();
    const progress = await loadProgress(db(), puzzleId);
    const verdicts = await db().bookRow.count({ where: { puzzleId } });
    expect(progress).toMatchObject({ state: 'done', done: verdicts, total: verdicts, verdicts });
    expect(progress?.nodes).toBeGreaterThan(0);
  });

  test('[V1] a false claim is found false: the same position is no mate in one', async () => {
    const puzzleId = await draft({ ...DAWSON, task: { kind: 'mate', moves: 1 }, published: [] });
    await verifyPuzzle({ puzzleId, verify: verifyHere });
    expect((await loadPuzzle(db(), { id: puzzleId }))?.claim).toBe('false');
  });

  test('[V9] a published line that fails its own marking is named in the report', async () => {
    const puzzleId = await draft({ ...MATE_IN_ONE, published: ['Ra8#', 'Kf1'] });
    await verifyPuzzle({ puzzleId, verify: verifyHere });
    const puzzle = await loadPuzzle(db(), { id: puzzleId });
    expect(puzzle?.report).toMatchObject({
      v: 1,
      publishedLines: [{ outcome: 'solved' }, { text: 'Kf1', outcome: 'wrong' }],
    });
  });

  test('[A5] a draft that is being changed as its verification ends does not get the former claim', async () => {
    const puzzleId = await draft(MATE_IN_ONE);
    const { showId } = await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } });
    let verified: Promise<void> | null = null;
    await inTransaction(async (tx) => {
      await holdMarking(tx, puzzleId);
      await replaceTerms(tx, { id: puzzleId, showId }, { ...DAWSON, task: { kind: 'mate', moves: 1 } });
      verified = verifyPuzzle({ puzzleId, verify: verifyHere });
      // The verdicts are there, and the end of the verification as well.
      for (let tries = 0; tries < 100 && (await db().bookRow.count({ where: { puzzleId } })) < 16; tries += 1)
        await sleep(50);
      await sleep(1000);
    }, 30_000);
    await verified;
    const puzzle = await loadPuzzle(db(), { id: puzzleId });
    expect([puzzle?.terms.fen, puzzle?.claim, puzzle?.verifiedAt]).toEqual([DAWSON.fen, null, null]);
  });

  test('killed half way, it goes on from the rows that are there', async () => {
    const puzzleId = await draft(DAWSON);
    let calls = 0;
    const dying: Verify = async (question) => {
      calls += 1;
      if (calls > 2) throw new Error('killed');
      return verifyHere(question);
    };
    await expect(verifyPuzzle({ puzzleId, verify: dying })).rejects.toThrow('killed');
    expect((await loadProgress(db(), puzzleId))?.state).toBe('failed');
    const before = await db().bookRow.findMany({ where: { puzzleId }, orderBy: { id: 'asc' } });
    expect(before.length).toBeGreaterThan(0);
    let asked = 0;
    await verifyPuzzle({
      puzzleId,
      verify: (question) => {
        asked += question.lacking.length;
        return verifyHere(question);
      },
    });
    const after = await db().bookRow.count({ where: { puzzleId } });
    expect(asked).toBe(after - before.length);
    expect((await loadPuzzle(db(), { id: puzzleId }))?.claim).toBe('true');
  });

  test('of terms that were changed meanwhile is not kept as theirs', async () => {
    const puzzleId = await draft(DAWSON);
    let isFirst = true;
    await verifyPuzzle({
      puzzleId,
      verify: async (question) => {
        if (isFirst) await db().puzzle.update({ where: { id: puzzleId }, data: { mateMoves: 1 } });
        isFirst = false;
        return verifyHere(question);
      },
    });
    expect((await loadPuzzle(db(), { id: puzzleId }))?.verifiedAt).toBeNull();
  });
});
