import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { loadOpenRegrade } from '#lib/store/regrades.ts';
import { gradeAgain } from '#lib/usecases/answers/grade-again.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { overruleMark } from '#lib/usecases/answers/overrule-mark.ts';
import { settleDoubtful } from '#lib/usecases/answers/settle-doubtful.ts';
import { showDoubtful } from '#lib/usecases/answers/show-doubtful.ts';
import { undoSettlement } from '#lib/usecases/answers/undo-settlement.ts';
import { buildMarked, marksOf, reveal, ruleForBoAndCy } from '../../support/build-regrade.ts';
import { buildShow } from '../../support/build-show.ts';
import { buildHealey, markEverything, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { loggedOf } from '../../support/deeds.ts';

givenDatabase();

test('[A3] only the word of that reason is taken back, and only once', async () => {
  const { memberId, ...place } = await buildShow();
  const { slug, puzzleId, terms } = await buildHealey({ place });
  for (const text of ['Nxx5+', 'Rxx']) await send(slug, text);
  await markEverything(puzzleId, terms);
  for (const why of ['first', 'second']) {
    const shown = await showDoubtful({ puzzleId, doubt: null });
    const doubt = shown.ok ? (shown.value.question?.doubt ?? '') : '';
    await settleDoubtful({
      puzzleId,
      memberId,
      why,
      doubt,
      settlement: { kind: 'outcome', outcome: 'chatter', points: 0 },
    });
  }
  expect(await undoSettlement({ puzzleId, memberId, why: 'second' })).toEqual({ ok: true, value: 1 });
  expect(await undoSettlement({ puzzleId, memberId, why: 'second' })).toEqual({
    ok: false,
    reason: { code: 'nothing-to-undo' },
  });
  await markEverything(puzzleId, terms);
  const current = await db().mark.findMany({
    where: { puzzleId, isCurrent: true },
    orderBy: { answerId: 'asc' },
  });
  expect(current.map((mark) => mark.madeBy).sort()).toEqual(['person', 'program']);
  expect(await db().mark.count({ where: { puzzleId } })).toBe(5);
});

test('[A7] after the reveal an overrule gives way at once to what the program had found, and nothing else moves', async () => {
  const { puzzleId, memberId, answers } = await buildMarked();
  const before = await marksOf(puzzleId);
  const word = { outcome: 'solved', points: 5, why: 'it is enough', memberId } as const;
  for (const answerId of [answers.Bo, answers.Cy]) await overruleMark({ ...word, answerId });
  expect(await marksOf(puzzleId)).toMatchObject({ Bo: 'solved 5', Cy: 'solved 5' });
  const undone = await undoSettlement({ puzzleId, memberId, why: 'it is enough' });
  expect(undone).toEqual({ ok: true, value: 2 });
  expect(await marksOf(puzzleId)).toEqual(before);
  expect(await db().answer.count({ where: { puzzleId, work: 'to-mark' } })).toBe(0);
  // From which mark to which: one entry for each mark that has changed.
  const marks = await db().mark.findMany({ where: { puzzleId }, orderBy: { id: 'asc' } });
  const changed = [answers.Bo, answers.Cy].map((answer) => ({
    answer,
    from: marks.find((one) => one.answerId === answer && one.madeBy === 'person')?.id,
    to: marks.find((one) => one.answerId === answer && one.isCurrent)?.id,
  }));
  expect((await loggedOf(puzzleId)).at(-1)).toEqual([
    'settlement-undone',
    { rulings: [], answers: [answers.Bo, answers.Cy], changed },
  ]);
  expect(await loadOpenRegrade(db(), puzzleId)).toBeNull();
});

test('[A7] after the reveal a ruling taken back is previewed like any other change', async () => {
  const { puzzleId, memberId } = await buildMarked({ isRevealed: false });
  await ruleForBoAndCy(puzzleId, memberId);
  await gradeAgain(db(), { id: puzzleId }, { answers: 'all', reason: 'it is enough', memberId });
  await markAnswers({ puzzleId });
  await reveal(puzzleId);
  const before = await marksOf(puzzleId);
  const undone = await undoSettlement({ puzzleId, memberId, why: 'it is enough' });
  expect(undone).toEqual({ ok: true, value: 5 });
  expect(await marksOf(puzzleId)).toEqual(before);
  expect(await loadOpenRegrade(db(), puzzleId)).toMatchObject({ scope: { answers: 'all' } });
});
