import { expect, test } from 'vitest';
import { listAnswers } from '#lib/usecases/answers/list-answers.ts';
import { overruleMark } from '#lib/usecases/answers/overrule-mark.ts';
import { showMark } from '#lib/usecases/answers/show-mark.ts';
import { buildShow } from '../../support/build-show.ts';
import { buildHealey, markEverything, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('[A1, A3] a mark opens with its ledger; an overrule stands beside what the program found', async () => {
  const { memberId, ...place } = await buildShow();
  const { slug, puzzleId, terms } = await buildHealey({ place });
  const { answerId } = await send(slug, '1.Qd6+', { name: 'Cy' });
  await markEverything(puzzleId, terms);
  const before = await showMark({ puzzleId, answerId, locale: 'en' });
  expect(before?.mark?.outcome).toBe('wrong');
  expect(before?.ledger?.rows.map((row) => [row.uci, row.verdict])).toEqual([['g6d6', 'slips']]);
  expect(before?.explanation).toContain('Nxd6');
  expect(before?.program).toBeNull();

  await overruleMark({ answerId, outcome: 'solved', points: 4, why: 'meant the other queen', memberId });
  const after = await showMark({ puzzleId, answerId, locale: 'en' });
  expect([after?.mark?.outcome, after?.mark?.points, after?.program?.outcome]).toEqual([
    'solved',
    4,
    'wrong',
  ]);
  expect(after?.history.map((step) => [step.outcome, step.by === null, step.why, step.isCurrent])).toEqual([
    ['wrong', true, null, false],
    ['solved', false, 'meant the other queen', true],
  ]);
  const page = await listAnswers({ puzzleId, below: null, outcome: 'solved' });
  expect(page.lines.map((line) => [line.id, line.isOverruled])).toEqual([[answerId, true]]);
});

test('[A8] an answer opens under its own puzzle alone', async () => {
  const { slug, puzzleId } = await buildHealey();
  const { answerId } = await send(slug, '1.Rh1');
  expect(await showMark({ puzzleId: puzzleId + 1, answerId, locale: 'en' })).toBeNull();
  expect(await showMark({ puzzleId, answerId: answerId + 999, locale: 'en' })).toBeNull();
  expect(await showMark({ puzzleId, answerId, locale: 'de' })).toMatchObject({
    mark: null,
    explanation: null,
    history: [],
  });
});
