import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { changeDraft } from '#lib/usecases/puzzles/change-draft.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

const CHANGED = { ...MATE_IN_ONE, published: ['1.Ra8', 'Ra8 mate'], solverMoves: 1 };

test('other terms take the place of the former, and what was verified no longer holds', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
  await db().puzzle.update({ where: { id: puzzleId }, data: { verifiedAt: new Date(), claim: 'true' } });
  expect((await changeDraft({ puzzleId, terms: CHANGED, memberId: null })).ok).toBe(true);
  const row = await db().puzzle.findUniqueOrThrow({
    where: { id: puzzleId },
    include: { publishedLines: { orderBy: { ordinal: 'asc' } } },
  });
  expect([row.verifiedAt, row.claim, row.solverMoves]).toEqual([null, null, 1]);
  expect(row.publishedLines.map((line) => line.text)).toEqual(CHANGED.published);
});

test('a published puzzle and an unknown one are refused', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow());
  const codeOf = async (id: number) => {
    const changed = await changeDraft({ puzzleId: id, terms: CHANGED, memberId: null });
    return changed.ok ? null : changed.reason.code;
  };
  expect(await codeOf(puzzleId)).toBe('published');
  expect(await codeOf(999_999)).toBe('unknown-puzzle');
});
