import { expect, test } from 'vitest';
import { sleep } from '#lib/machine/clock.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { holdReveal, saveRevealed } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { loadOpenRegrade } from '#lib/store/regrades.ts';
import { gradeAgain } from '#lib/usecases/answers/grade-again.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { runRegrade } from '#lib/usecases/answers/run-regrade.ts';
import { submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { submission } from '../../support/build-answer.ts';
import { buildMarked, marksOf, reveal, ruleForBoAndCy } from '../../support/build-regrade.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function threeDone() {
  const { puzzleId, slug } = await buildPuzzle(await buildShow());
  const ids: number[] = [];
  for (const text of ['1.Ra8#', 'Ra8', 'hello']) {
    const sent = await submitAnswer(submission(slug, text));
    if (!sent.ok) throw new Error(JSON.stringify(sent.reason));
    ids.push(sent.value.answerId);
  }
  await db().answer.updateMany({ where: { puzzleId }, data: { work: 'done' } });
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  if (puzzle === null) throw new Error('no puzzle');
  return { puzzle, ids };
}

async function waiting(puzzleId: number): Promise<number[]> {
  const rows = await db().answer.findMany({ where: { puzzleId, work: 'to-mark' }, orderBy: { id: 'asc' } });
  return rows.map((row) => row.id);
}

test('[V8] before the reveal the named answers go back on the work list, and no others', async () => {
  const { puzzle, ids } = await threeDone();
  const count = await gradeAgain(db(), puzzle, {
    answers: ids.slice(1, 2),
    reason: 'said so',
    memberId: null,
  });
  expect(count).toBe(1);
  expect(await waiting(puzzle.id)).toEqual([ids[1]]);
});

test('[V8] or all of the puzzle, but never one that was withdrawn', async () => {
  const { puzzle, ids } = await threeDone();
  const withdrawn = { withdrawnAt: new Date(), text: '', name: null, standing: 'withdrawn' };
  await db().answer.update({ where: { id: ids[2] ?? 0 }, data: withdrawn });
  const count = await gradeAgain(db(), puzzle, { answers: 'all', reason: 'said so', memberId: null });
  expect(count).toBe(2);
  expect(await waiting(puzzle.id)).toEqual(ids.slice(0, 2));
});

test('[A7] after the reveal nothing goes back on the list: a regrade is opened, with the host and the reason', async () => {
  const { puzzleId, memberId, answers } = await buildMarked();
  const before = await marksOf(puzzleId);
  const asked = { answers: [answers.Ada], reason: 'said so', memberId };
  expect(await gradeAgain(db(), { id: puzzleId }, asked)).toBe(1);
  expect(await waiting(puzzleId)).toEqual([]);
  expect(await loadOpenRegrade(db(), puzzleId)).toMatchObject({
    state: 'waiting',
    reason: 'said so',
    memberId,
    scope: { answers: [answers.Ada], round: 1 },
  });
  expect(await marksOf(puzzleId)).toEqual(before);
});

test('[A7] a second word joins the regrade that is open, which is then previewed anew', async () => {
  const { puzzleId, memberId, answers } = await buildMarked();
  const puzzle = { id: puzzleId };
  await gradeAgain(db(), puzzle, { answers: [answers.Cy], reason: 'first', memberId });
  const first = await loadOpenRegrade(db(), puzzleId);
  await runRegrade(first?.id ?? 0);
  expect((await loadOpenRegrade(db(), puzzleId))?.state).toBe('previewed');
  await gradeAgain(db(), puzzle, { answers: [answers.Ada, answers.Cy], reason: 'second', memberId });
  expect(await loadOpenRegrade(db(), puzzleId)).toMatchObject({
    id: first?.id,
    state: 'waiting',
    stored: null,
    reason: 'first; second',
    scope: { answers: [answers.Ada, answers.Cy], round: 2 },
  });
  await gradeAgain(db(), puzzle, { answers: 'all', reason: 'second', memberId });
  expect(await loadOpenRegrade(db(), puzzleId)).toMatchObject({
    reason: 'first; second',
    scope: { answers: 'all' },
  });
  expect(await db().regrade.count({ where: { puzzleId } })).toBe(1);
});

test('[A7] an answer without a mark is marked the ordinary way also after the reveal', async () => {
  const { puzzleId, slug } = await buildMarked({ isRevealed: false });
  const late = await send(slug, 'Ra8', { name: 'Flo' });
  await reveal(puzzleId);
  await markAnswers({ puzzleId });
  expect(await marksOf(puzzleId)).toMatchObject({ Flo: 'solved 5' });
  await db().mark.deleteMany({ where: { answerId: late.answerId } });
  const asked = { answers: 'all', reason: 'x', memberId: null } as const;
  expect(await gradeAgain(db(), { id: puzzleId }, asked)).toBe(6);
  expect(await waiting(puzzleId)).toEqual([late.answerId]);
});

test('[A7] an answer put back before the reveal that comes to its turn after it waits for a regrade', async () => {
  const { puzzleId, memberId, answers } = await buildMarked({ isRevealed: false });
  await ruleForBoAndCy(puzzleId, memberId);
  await gradeAgain(db(), { id: puzzleId }, { answers: 'all', reason: 'said so', memberId });
  const before = await marksOf(puzzleId);
  await reveal(puzzleId);
  await markAnswers({ puzzleId });
  expect(await marksOf(puzzleId)).toEqual(before);
  expect(await waiting(puzzleId)).toEqual([]);
  const regrade = await loadOpenRegrade(db(), puzzleId);
  expect(regrade).toMatchObject({ reason: '', scope: { answers: Object.values(answers) } });
  const entry = await db().log.findFirstOrThrow({ where: { puzzleId, kind: 'regrade-asked' } });
  expect(entry.details).toEqual({ regrade: regrade?.id, answers: 5 });
});

test('[A7] marks that are just being written hold the reveal off', async () => {
  const { puzzleId } = await buildMarked({ isRevealed: false });
  let isRevealed = false;
  let revealing: Promise<void> | undefined;
  await inTransaction(async (tx) => {
    expect(await holdReveal(tx, puzzleId)).toBe(false);
    revealing = inTransaction((other) => saveRevealed(other, puzzleId)).then(() => {
      isRevealed = true;
    });
    await sleep(300);
    expect(isRevealed).toBe(false);
  });
  await revealing;
  expect(await holdReveal(db(), puzzleId)).toBe(true);
});
