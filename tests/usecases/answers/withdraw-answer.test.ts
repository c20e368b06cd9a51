import { expect, test } from 'vitest';
import { randomToken } from '#lib/machine/tokens.ts';
import { db } from '#lib/store/client.ts';
import { overruleMark } from '#lib/usecases/answers/overrule-mark.ts';
import { submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { withdrawAnswer } from '#lib/usecases/answers/withdraw-answer.ts';
import { submission } from '../../support/build-answer.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { buildHealey, markEverything } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function sent(slug: string, text: string, more = {}) {
  const result = await submitAnswer(submission(slug, text, more));
  if (!result.ok) throw new Error(JSON.stringify(result.reason));
  return result.value;
}

test('erases name and text of every version, leaves stubs with number and time', async () => {
  const { slug, puzzleId } = await buildPuzzle(await buildShow());
  const first = await sent(slug, 'Kf1', { name: 'Quintessa' });
  await sent(slug, 'Ra8', { name: 'Quintessa', receipt: first.token });
  expect(await withdrawAnswer({ token: first.token })).toEqual({ ok: true, value: { withdrawn: 2 } });
  const stubs = await db().answer.findMany({ where: { puzzleId } });
  expect(stubs.map((stub) => [stub.text, stub.name, stub.standing])).toEqual([
    ['', null, 'withdrawn'],
    ['', null, 'withdrawn'],
  ]);
  expect(stubs.every((stub) => stub.withdrawnAt !== null)).toBe(true);
  const everything = JSON.stringify([
    await db().solver.findMany(),
    await db().answer.findMany(),
    await db().log.findMany(),
  ]);
  expect(everything).not.toContain('Quintessa');
});

test('twice changes nothing, and is logged once', async () => {
  const { slug, puzzleId } = await buildPuzzle(await buildShow());
  const { token } = await sent(slug, 'Ra8');
  await withdrawAnswer({ token });
  expect(await withdrawAnswer({ token })).toEqual({ ok: true, value: { withdrawn: 0 } });
  expect(await db().log.count({ where: { puzzleId, kind: 'answers-withdrawn' } })).toBe(1);
});

test('leaves the answers to other puzzles, and the name with them', async () => {
  const place = await buildShow();
  const one = await buildPuzzle(place);
  const other = await buildPuzzle(place);
  const first = await sent(one.slug, 'Ra8', { name: 'Ada' });
  await sent(other.slug, 'Ra8', { name: 'Ada', receipt: first.token });
  await withdrawAnswer({ token: first.token });
  const left = await db().answer.findFirstOrThrow({
    where: { puzzleId: other.puzzleId },
    include: { solver: true },
  });
  expect(left.text === '' && left.withdrawnAt === null).toBe(false);
});

test('an unknown receipt and nonsense look alike', async () => {
  const unknown = { ok: false, reason: { code: 'unknown-receipt' } };
  expect(await withdrawAnswer({ token: randomToken() })).toEqual(unknown);
  expect(await withdrawAnswer({ token: 'nonsense' })).toEqual(unknown);
});

test('[A33] erases what marks quote of the text and what the host wrote about it, and nothing else of a mark', async () => {
  const { memberId, ...place } = await buildShow();
  const { slug, puzzleId, terms } = await buildHealey({ place });
  const { token, answerId } = await sent(slug, 'Nxx5+', { name: 'Quintessa' });
  await markEverything(puzzleId, terms);
  const unread = await db().mark.findFirstOrThrow({ where: { answerId } });
  expect(JSON.stringify(unread.reason), 'the mark quotes the text').toContain('Nxx5');
  await overruleMark({ answerId, outcome: 'wrong', points: null, why: 'no, Quintessa', memberId });
  await withdrawAnswer({ token });
  const marks = await db().mark.findMany({ where: { answerId }, orderBy: { id: 'asc' } });
  expect(JSON.stringify(marks)).not.toMatch(/Nxx5|quintessa/i);
  expect(marks.map(({ outcome, why }) => [outcome, why])).toEqual([
    ['unreadable', null],
    ['wrong', ''],
  ]);
  const change = db().mark.updateMany({ where: { answerId }, data: { points: 5 } });
  await expect(change).rejects.toThrow(/never changed/);
});

test('[A3] reason and host’s word of a mark that stands cannot be changed', async () => {
  const { slug, puzzleId, terms } = await buildHealey();
  const { answerId } = await sent(slug, '1.Rh1');
  await markEverything(puzzleId, terms);
  const change = db().mark.updateMany({ where: { answerId }, data: { reason: { code: 'x', params: {} } } });
  await expect(change).rejects.toThrow(/never changed/);
});
