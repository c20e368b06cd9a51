import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import type { RegradeScope } from '#lib/store/regrades.ts';
import { saveReadingRuling } from '#lib/store/rulings.ts';
import { textHash } from '#lib/usecases/answers/doubt-key.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { overruleMark } from '#lib/usecases/answers/overrule-mark.ts';
import { isAskingOn, isSamePreview, workOutMarks } from '#lib/usecases/answers/work-out-marks.ts';
import { buildMarked, marksOf, ruleAgainstAda, ruleForBoAndCy } from '../../support/build-regrade.ts';
import { send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function workOut(puzzleId: number, answers: RegradeScope['answers'] = 'all') {
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  if (puzzle === null) throw new Error('no puzzle');
  const worked = await workOutMarks(db(), puzzle, { answers, onPage: async () => true });
  if (worked === null || worked.lacking.length > 0) throw new Error('no preview');
  return worked.stored;
}

test('[A7] the difference to the marks in force, and nothing is written', async () => {
  const { puzzleId, memberId, answers } = await buildMarked();
  await ruleForBoAndCy(puzzleId, memberId);
  await ruleAgainstAda(puzzleId, memberId);
  const before = await marksOf(puzzleId);
  const { preview, expected, unjudged } = await workOut(puzzleId);
  expect(preview.changes).toEqual([
    {
      answerId: answers.Ada,
      from: 'solved',
      to: 'wrong',
      points: -5,
      direction: 'down',
      wordFor: 'would-fall',
    },
    { answerId: answers.Bo, from: 'unclear', to: 'solved', points: 5, direction: 'up', wordFor: null },
    { answerId: answers.Cy, from: 'unclear', to: 'solved', points: 5, direction: 'up', wordFor: null },
  ]);
  expect([preview.same, preview.pointsUp, preview.pointsDown, unjudged]).toEqual([2, 10, 5, 0]);
  expect(expected.map(([answer]) => answer)).toEqual([answers.Ada, answers.Bo, answers.Cy]);
  expect(await marksOf(puzzleId)).toEqual(before);
});

test('[A7] only the answers of the scope are looked at', async () => {
  const { puzzleId, memberId, answers } = await buildMarked();
  await ruleForBoAndCy(puzzleId, memberId);
  const { preview } = await workOut(puzzleId, [answers.Cy, answers.Di]);
  expect(preview.changes.map((one) => one.answerId)).toEqual([answers.Cy]);
  expect(preview.same).toBe(1);
});

test('[A7] a name that was read out with this puzzle needs a word, one of another puzzle does not', async () => {
  const { puzzleId, memberId, answers } = await buildMarked();
  await ruleForBoAndCy(puzzleId, memberId);
  const solverOf = async (id: number) => (await db().answer.findUniqueOrThrow({ where: { id } })).solverId;
  const read = async (puzzle: number, answer: number) =>
    appendLog(db(), {
      kind: 'sheet-read',
      puzzleId: puzzle,
      memberId,
      details: { solvers: [await solverOf(answer)] },
    });
  await read(puzzleId, answers.Bo);
  await read(puzzleId + 1000, answers.Cy);
  const { preview } = await workOut(puzzleId);
  expect(preview.changes.map((one) => [one.answerId, one.wordFor])).toEqual([
    [answers.Bo, 'read-out'],
    [answers.Cy, null],
  ]);
});

test("[A3] a mark under a person's word is compared with what the program found, and named apart", async () => {
  const { puzzleId, memberId, answers } = await buildMarked();
  const word = { outcome: 'wrong', points: 0, why: 'no', memberId } as const;
  for (const answerId of [answers.Bo, answers.Di]) await overruleMark({ ...word, answerId });
  await ruleForBoAndCy(puzzleId, memberId);
  const { preview } = await workOut(puzzleId);
  expect(preview.overruled).toEqual([answers.Bo]);
  expect(preview.changes.map((one) => one.answerId)).toEqual([answers.Cy]);
});

test('[P2] a later text that can now be read would count instead of a better answer: the host is asked', async () => {
  const { puzzleId, memberId, slug } = await buildMarked({ isRevealed: false });
  const first = await send(slug, 'Ra8', { name: 'Flo' });
  const { answerId } = await send(slug, 'Kxx1', { name: 'Flo', receipt: first.token });
  await markAnswers({ puzzleId });
  await db().$executeRaw`update puzzle set revealed_at = clock_timestamp() where id = ${puzzleId}`;
  await saveReadingRuling(db(), puzzleId, {
    textHash: textHash('Kxx1'),
    meant: ['a1b1'],
    reason: 'a guess',
    memberId,
  });
  const { preview } = await workOut(puzzleId);
  expect(preview.changes).toEqual([
    { answerId, from: 'unreadable', to: 'wrong', points: 0, direction: 'up', wordFor: 'would-count' },
  ]);
});

test('two previews are the same when they tell the same, however many answers stay as they are', async () => {
  const { puzzleId, memberId } = await buildMarked();
  await ruleForBoAndCy(puzzleId, memberId);
  const one = await workOut(puzzleId);
  const more = { ...one, preview: { ...one.preview, same: 99 }, unjudged: 0 };
  expect(isSamePreview(one, JSON.parse(JSON.stringify(more)))).toBe(true);
  expect(isSamePreview(one, { ...one, expected: one.expected.slice(1) })).toBe(false);
  await ruleAgainstAda(puzzleId, memberId);
  expect(isSamePreview(one, await workOut(puzzleId))).toBe(false);
});

test('[A7] what the book does not answer, however often it is asked, is left out', () => {
  const preview = { changes: [], same: 1, overruled: [], pointsUp: 0, pointsDown: 0 };
  const stored = { v: 1, preview, expected: [], unjudged: 1 } as const;
  const want = { fen: '', position: '', movesLeft: 1, move: 'a1a8', revision: 1 };
  const scope = { v: 1, answers: 'all', round: 1, isRenewed: false, saidBy: null } as const;
  expect(isAskingOn({ stored, lacking: [want] }, { ...scope, asks: 0 })).toBe(true);
  expect(isAskingOn({ stored, lacking: [want] }, { ...scope, asks: 60 })).toBe(false);
  expect(isAskingOn({ stored, lacking: [] }, { ...scope, asks: 0 })).toBe(false);
});
