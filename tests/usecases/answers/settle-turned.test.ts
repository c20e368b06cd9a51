import { expect, test } from 'vitest';
import { db, inTransaction } from '#lib/store/client.ts';
import { listDoubtfulGroups } from '#lib/store/doubtful.ts';
import { holdReveal } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { claimAnswers } from '#lib/store/work-list.ts';
import { loadBook } from '#lib/usecases/answers/loaded-book.ts';
import { markWithin } from '#lib/usecases/answers/mark-answers.ts';
import { settleTurned } from '#lib/usecases/answers/settle-turned.ts';
import { undoSettlement } from '#lib/usecases/answers/undo-settlement.ts';
import { buildShow } from '../../support/build-show.ts';
import { buildHealey, markEverything, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

/** Marks what waits; the deed comes when book and answers are loaded, the marks are written after it has begun. */
async function whileMarking(puzzleId: number, deed: () => void): Promise<void> {
  await inTransaction(async (tx) => {
    await holdReveal(tx, puzzleId);
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    const book = puzzle === null ? null : await loadBook(tx, puzzle);
    const answers = await claimAnswers(tx, puzzleId);
    if (puzzle === null || book === null) throw new Error('no book');
    deed();
    await new Promise((next) => setTimeout(next, 400));
    await markWithin(tx, { puzzle, book, answers });
  });
}

test('[R14] one ruling settles all such texts, earlier and later, until it is taken back', async () => {
  const { memberId, ...place } = await buildShow();
  const { slug, puzzleId, terms } = await buildHealey({ place });
  for (const text of ['Rg8', 'rg8', 'Rg8 !', 'it must be Rg8']) await send(slug, text);
  await markEverything(puzzleId, terms);
  const outcomes = async () =>
    (await db().mark.findMany({ where: { puzzleId, isCurrent: true }, orderBy: { answerId: 'asc' } })).map(
      (mark) => `${mark.outcome} ${mark.line.join()}`,
    );
  expect(await outcomes()).toEqual(Array(4).fill('unreadable '));
  const why = 'seen from Black';
  expect(await settleTurned({ puzzleId, memberId, why })).toEqual({ ok: true, value: 4 });
  await send(slug, 'Rook to g8, says my son');
  await markEverything(puzzleId, terms);
  expect(await outcomes()).toEqual(Array(5).fill('unfinished d1b1'));
  expect(await listDoubtfulGroups(db(), puzzleId)).toEqual([]);
  expect(await db().ruling.count({ where: { puzzleId, supersededAt: null } })).toBe(1);
  expect(await db().log.count({ where: { kind: 'ruling-made', puzzleId } })).toBe(1);
  expect(await undoSettlement({ puzzleId, memberId, why })).toMatchObject({ ok: true });
  await markEverything(puzzleId, terms);
  expect(await outcomes()).toEqual(Array(5).fill('unreadable '));
});

test('[R14] an answer that is being marked in the middle of the ruling is settled by it as well', async () => {
  const { memberId, ...place } = await buildShow();
  const { slug, puzzleId, terms } = await buildHealey({ place });
  await send(slug, 'Rg8');
  await markEverything(puzzleId, terms);
  await send(slug, 'Rook to g8, says my son');
  let settled: ReturnType<typeof settleTurned> | null = null;
  await whileMarking(puzzleId, () => {
    settled = settleTurned({ puzzleId, memberId, why: 'seen from Black' });
  });
  expect(await settled).toEqual({ ok: true, value: 2 });
  await markEverything(puzzleId, terms);
  expect(await listDoubtfulGroups(db(), puzzleId)).toEqual([]);
});

test('[R14] nor does an answer that is being marked in the middle of taking it back keep it', async () => {
  const { memberId, ...place } = await buildShow();
  const { slug, puzzleId, terms } = await buildHealey({ place });
  await send(slug, 'Rg8');
  await markEverything(puzzleId, terms);
  const why = 'seen from Black';
  expect(await settleTurned({ puzzleId, memberId, why })).toMatchObject({ ok: true });
  await markEverything(puzzleId, terms);
  await send(slug, 'Rook to g8, says my son');
  let undone: ReturnType<typeof undoSettlement> | null = null;
  await whileMarking(puzzleId, () => {
    undone = undoSettlement({ puzzleId, memberId, why });
  });
  expect(await undone).toMatchObject({ ok: true });
  await markEverything(puzzleId, terms);
  expect(await listDoubtfulGroups(db(), puzzleId)).toMatchObject([{ doubt: 'turned', answers: 2 }]);
});
