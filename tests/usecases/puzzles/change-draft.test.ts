import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { loadProgress } from '#lib/store/progress.ts';
import { loadPuzzle, loadTerms } from '#lib/store/puzzles.ts';
import { changeDraft } from '#lib/usecases/puzzles/change-draft.ts';
import { verifyPuzzle } from '#lib/usecases/puzzles/verify-puzzle.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { jobsOf, loggedOf } from '../../support/deeds.ts';
import { verifyHere } from '../../support/engine-in-process.ts';
import { refused } from '../../support/positions.ts';

givenDatabase();

const MATE_IN_TWO = { ...MATE_IN_ONE, task: { kind: 'mate', moves: 2 }, published: ['Kf1', 'Ra8#'] } as const;

test('[V9] changed terms replace lines and task, and what was verified holds no longer', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
  await verifyPuzzle({ puzzleId, verify: verifyHere });
  expect((await loadPuzzle(db(), { id: puzzleId }))?.claim).toBe('true');
  expect((await changeDraft({ puzzleId, terms: MATE_IN_TWO, memberId: null })).ok).toBe(true);
  const stored = await loadPuzzle(db(), { id: puzzleId });
  if (stored === null) throw new Error('gone');
  expect([stored.claim, stored.verifiedAt, stored.engineVersion]).toEqual([null, null, null]);
  expect(await loadTerms(db(), stored)).toEqual(MATE_IN_TWO);
  expect((await loadProgress(db(), puzzleId))?.state).toBe('waiting');
  expect([...(await jobsOf(puzzleId)).keys()]).toContain('verify-puzzle');
  expect((await loggedOf(puzzleId)).at(-1)?.[0]).toBe('puzzle-changed');
});

test('[A1] a published puzzle keeps its terms: viewers have answered under them', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow());
  expect(refused(await changeDraft({ puzzleId, terms: MATE_IN_TWO, memberId: null }))).toEqual({
    code: 'published',
  });
  const stored = await loadPuzzle(db(), { id: puzzleId });
  expect(stored?.task).toEqual({ kind: 'mate', moves: 1 });
});

test('wrong terms are refused and the former ones stay', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
  const wrong = { ...MATE_IN_ONE, task: { kind: 'mate', moves: 0 } } as const;
  expect(refused(await changeDraft({ puzzleId, terms: wrong, memberId: null })).code).toBe('mate-moves');
  expect((await loadPuzzle(db(), { id: puzzleId }))?.task).toEqual({ kind: 'mate', moves: 1 });
});

test('a puzzle that is not there is refused', async () => {
  const change = { puzzleId: 987_654, terms: MATE_IN_ONE, memberId: null };
  expect(refused(await changeDraft(change))).toEqual({ code: 'unknown-puzzle' });
});
