import { expect, test } from 'vitest';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { eraseAnswers } from '#lib/store/answers.ts';
import { db } from '#lib/store/client.ts';
import { lockSolver } from '#lib/store/solvers.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { overruleMark } from '#lib/usecases/answers/overrule-mark.ts';
import { submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { withdrawAnswer } from '#lib/usecases/answers/withdraw-answer.ts';
import { submission } from '../../support/build-answer.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function marked(text: string) {
  const show = await buildShow();
  const { slug, puzzleId } = await buildPuzzle(show);
  await db().puzzle.update({ where: { id: puzzleId }, data: { engineVersion: ENGINE_VERSION } });
  const sent = await submitAnswer(submission(slug, text));
  if (!sent.ok) throw new Error(text);
  await markAnswers({ puzzleId });
  return { ...show, puzzleId, ...sent.value };
}

test('[A3] an overrule is in force with its reason; the former mark names its successor', async () => {
  const { answerId, memberId } = await marked('no moves here, only thanks');
  const done = await overruleMark({
    answerId,
    outcome: 'solved',
    points: null,
    why: 'told me in person',
    memberId,
  });
  const marks = await db().mark.findMany({ where: { answerId }, orderBy: { id: 'asc' } });
  expect(marks.map((mark) => [mark.outcome, mark.isCurrent, mark.madeBy, mark.why])).toEqual([
    ['chatter', false, 'program', null],
    ['solved', true, 'person', 'told me in person'],
  ]);
  expect(done).toEqual({ ok: true, value: marks[1]?.id });
  expect(marks[0]?.supersededById).toBe(marks[1]?.id);
  expect(marks[1]?.points).toBe(5);
});

test('[P4] an overruled text counts from then on', async () => {
  const { answerId, memberId } = await marked('only thanks');
  expect((await db().answer.findUniqueOrThrow({ where: { id: answerId } })).standing).toBe('no-answer');
  await overruleMark({ answerId, outcome: 'solved', points: 3, why: 'by word of mouth', memberId });
  expect((await db().answer.findUniqueOrThrow({ where: { id: answerId } })).standing).toBe('counted');
});

test('what is refused', async () => {
  const { answerId, memberId, token } = await marked('only thanks');
  const word = { answerId, outcome: 'solved', points: null, why: 'so', memberId } as const;
  const codeOf = async (more: object) => {
    const result = await overruleMark({ ...word, ...more });
    return result.ok ? null : result.reason.code;
  };
  expect(await codeOf({ why: '  ' })).toBe('why-empty');
  expect(await codeOf({ points: 6 })).toBe('points');
  expect(await codeOf({ answerId: 999_999 })).toBe('unknown-answer');
  await withdrawAnswer({ token });
  expect(await codeOf({})).toBe('withdrawn');
});

test('[A33] an overrule that meets a withdrawal half way writes nothing about the answer', async () => {
  const { answerId, puzzleId, memberId } = await marked('only thanks');
  const word = {
    answerId,
    outcome: 'solved',
    points: null,
    why: 'a long story about the viewer',
    memberId,
  } as const;
  const { solverId } = await db().answer.findUniqueOrThrow({ where: { id: answerId } });
  let overruled: ReturnType<typeof overruleMark> | null = null;
  await db().$transaction(async (tx) => {
    await lockSolver(tx, solverId);
    overruled = overruleMark(word);
    await new Promise((next) => setTimeout(next, 300));
    await eraseAnswers(tx, puzzleId, solverId);
  });
  expect(await overruled).toEqual({ ok: false, reason: { code: 'withdrawn' } });
  expect(await db().mark.count({ where: { answerId, madeBy: 'person' } })).toBe(0);
});
