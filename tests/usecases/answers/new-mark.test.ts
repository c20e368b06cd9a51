import { expect, test } from 'vitest';
import { findAnswer } from '#lib/store/answers.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { judgeAnswer } from '#lib/usecases/answers/judge-answer.ts';
import { loadBook } from '#lib/usecases/answers/loaded-book.ts';
import { toNewMark } from '#lib/usecases/answers/new-mark.ts';
import { buildHealey, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function judged(text: string, intakeFlags: string[]) {
  const { slug, puzzleId } = await buildHealey();
  const { answerId } = await send(slug, text);
  await db().answer.update({ where: { id: answerId }, data: { intakeFlags } });
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  const book = puzzle === null ? null : await loadBook(db(), puzzle);
  const answer = await findAnswer(db(), answerId);
  if (book === null || answer === null) throw new Error('nothing to judge');
  return { book, opinion: judgeAnswer(book, answer) };
}

test('[T3] what intake knows of an answer stands among the flags of its mark', async () => {
  const { book, opinion } = await judged('1.Qb1', ['edited-unseen']);
  const [late] = toNewMark(opinion, 'late');
  expect(late).toMatchObject({ outcome: 'wrong', points: 0, regradeId: null, overrule: null });
  expect(late?.flags.slice(-2)).toEqual(['late', 'edited-unseen']);
  expect(late?.bookVersion).toBe(book.bookVersion);
  expect(toNewMark(opinion, 'uncertain')[0]?.flags.slice(-2)).toEqual(['time-uncertain', 'edited-unseen']);
});

test('an opinion that lacks something makes no mark', async () => {
  const { opinion } = await judged('1.Rh1 Nc5 2.Qb1', []);
  const lacking = { ...opinion, result: { kind: 'lacking', lacking: [] } } as const;
  expect(toNewMark(lacking, 'in-time')).toEqual([]);
});
