import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { loadPuzzle, loadPuzzleScheme } from '#lib/store/puzzles.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { editScheme, showSchemes } from '#lib/usecases/puzzles/edit-scheme.ts';
import { extendBook } from '#lib/usecases/puzzles/extend-book.ts';
import { showPublicPuzzle } from '#lib/usecases/puzzles/show-public-puzzle.ts';
import { submission } from '../../support/build-answer.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

const TEN = { solved: 10, slower: 4, base: 2, perLine: 6 };

test('[P1] edited numbers hold for puzzles set from then on; a puzzle keeps the version its viewers were shown', async () => {
  const { showId, memberId, ...place } = await buildShow();
  const before = await buildPuzzle({ showId, ...place });
  const edited = await editScheme({ showId, memberId, name: 'full-line', numbers: TEN });
  expect(edited).toMatchObject({ ok: true, value: { version: 2 } });
  const after = await buildPuzzle({ showId, ...place });
  const most = async (id: number) => {
    const puzzle = await loadPuzzle(db(), { id });
    return puzzle === null ? null : (await loadPuzzleScheme(db(), puzzle)).solved;
  };
  expect([await most(before.puzzleId), await most(after.puzzleId)]).toEqual([5, 10]);
  const shown = await showPublicPuzzle({ slug: after.slug, locale: 'en' });
  expect(shown).toMatchObject({ ok: true, value: { puzzle: { points: { solved: 10, slower: 4 } } } });

  const sent = await submitAnswer(submission(after.slug, '1.Ra8#'));
  if (!sent.ok) throw new Error(sent.reason.code);
  await markAnswers({ puzzleId: after.puzzleId });
  await extendBook({ puzzleId: after.puzzleId, verify: verifyHere });
  await markAnswers({ puzzleId: after.puzzleId });
  const mark = await db().mark.findFirst({ where: { answerId: sent.value.answerId, isCurrent: true } });
  expect(mark).toMatchObject({ outcome: 'solved', points: 10, scheme: 'full-line', schemeVersion: 2 });
});

test('[P1] the same numbers again make no version, nor do impossible ones, and other shows keep theirs', async () => {
  const { showId, memberId } = await buildShow();
  const other = await buildShow();
  await editScheme({ showId, memberId, name: 'full-line', numbers: TEN });
  expect(await editScheme({ showId, memberId, name: 'full-line', numbers: TEN })).toMatchObject({
    ok: true,
    value: { version: 2 },
  });
  const wrong = { ...TEN, slower: 11 };
  expect(await editScheme({ showId, memberId, name: 'full-line', numbers: wrong })).toMatchObject({
    ok: false,
  });
  const versions = async (id: number) => (await showSchemes(id)).map((one) => [one.name, one.version]);
  expect(await versions(showId)).toEqual([
    ['full-line', 2],
    ['key-move', 1],
  ]);
  expect(await versions(other.showId)).toEqual([
    ['full-line', 1],
    ['key-move', 1],
  ]);
});

test('[P1] ten edits at once are ten versions, one after another', async () => {
  const { showId, memberId } = await buildShow();
  const edits = Array.from({ length: 10 }, (_, n) =>
    editScheme({ showId, memberId, name: 'key-move', numbers: { ...TEN, solved: 20 + n } }),
  );
  const versions = (await Promise.all(edits)).map((one) => (one.ok ? one.value.version : 0));
  expect(versions.sort((a, b) => a - b)).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
});
