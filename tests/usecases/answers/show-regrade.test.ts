import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { loadOpenRegrade } from '#lib/store/regrades.ts';
import { addWants } from '#lib/store/wants.ts';
import { agreeToRegrade, askRegrade } from '#lib/usecases/answers/decide-regrade.ts';
import { overruleMark } from '#lib/usecases/answers/overrule-mark.ts';
import { runRegrade } from '#lib/usecases/answers/run-regrade.ts';
import { findOpenRegrade, showRegrade, watchRegrade } from '#lib/usecases/answers/show-regrade.ts';
import { buildMarked, ruleAgainstAda, ruleForBoAndCy } from '../../support/build-regrade.ts';
import { BACK_RANK } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function asked() {
  const built = await buildMarked();
  const { puzzleId, memberId, answers } = built;
  await overruleMark({ answerId: answers.Cy, outcome: 'wrong', points: 0, why: 'no', memberId });
  await ruleForBoAndCy(puzzleId, memberId);
  await ruleAgainstAda(puzzleId, memberId);
  await askRegrade({ puzzleId, memberId, reason: 'a viewer wrote in' });
  const regradeId = (await loadOpenRegrade(db(), puzzleId))?.id ?? 0;
  return { ...built, regradeId };
}

test('[A7] falls first with what they fall to, each by name; the rest, sums, and what stands under a word', async () => {
  const { puzzleId, regradeId, answers } = await asked();
  expect((await showRegrade(puzzleId)).open).toMatchObject({ state: 'waiting', preview: null });
  await runRegrade(regradeId);
  const { open, marked, decided } = await showRegrade(puzzleId);
  expect({ marked, decided }).toEqual({ marked: 5, decided: [] });
  expect(open).toMatchObject({ reason: 'a viewer wrote in', by: expect.stringMatching(/^owner/), round: 1 });
  const counted = { standing: 'counted' };
  expect(open?.preview).toEqual({
    asked: [
      {
        ...{ answerId: answers.Ada, name: 'Ada', ...counted, points: -5, direction: 'down' },
        wordFor: 'would-fall',
        from: { outcome: 'solved', atMove: null, points: 5, share: null },
        to: { outcome: 'wrong', atMove: 1, points: 0, share: null },
      },
    ],
    others: [
      {
        ...{ answerId: answers.Bo, name: 'Bo', ...counted, points: 5, direction: 'up', wordFor: null },
        from: { outcome: 'unclear', atMove: null, points: 0, share: null },
        to: { outcome: 'solved', atMove: null, points: 5, share: null },
      },
    ],
    counts: { asked: 1, others: 1 },
    rise: { marks: 1, points: 5 },
    fall: { marks: 1, points: 5 },
    same: 2,
    unjudged: 0,
    overruled: [{ answerId: answers.Cy, name: 'Cy' }],
  });
});

test('[A7] an answer withdrawn since is not shown any more', async () => {
  const { puzzleId, regradeId, answers } = await asked();
  await runRegrade(regradeId);
  const withdrawn = { withdrawnAt: new Date(), text: '', name: null, standing: 'withdrawn' };
  await db().answer.update({ where: { id: answers.Ada }, data: withdrawn });
  expect((await showRegrade(puzzleId)).open?.preview?.asked).toEqual([]);
});

test('[A7] what has become of it stands in the list, with how many marks were written', async () => {
  const { puzzleId, memberId, regradeId, answers } = await asked();
  await runRegrade(regradeId);
  await agreeToRegrade({ puzzleId, memberId, regradeId, round: 1, agreed: [answers.Ada] });
  await runRegrade(regradeId);
  const { open, decided } = await showRegrade(puzzleId);
  expect(open).toBeNull();
  // Ada and Bo, and beside Cy's overrule what the program finds now.
  expect(decided).toMatchObject([{ id: regradeId, state: 'applied', reason: 'a viewer wrote in', marks: 3 }]);
});

test('the running numbers: marking, asking the book, writing, over', async () => {
  const { puzzleId, memberId, regradeId } = await asked();
  expect(await watchRegrade(puzzleId)).toEqual({ state: 'running', stage: 'marking', done: 0, total: 0 });
  expect(await findOpenRegrade(puzzleId)).toBe('waiting');
  await db().regrade.update({ where: { id: regradeId }, data: { done: 5, total: 5 } });
  const want = { fen: BACK_RANK, position: 'x', movesLeft: 1, move: 'a1a8', revision: 1 };
  await addWants(db(), puzzleId, null, [want], 0);
  expect(await watchRegrade(puzzleId)).toEqual({ state: 'running', stage: 'book', done: 5, total: 5 });
  await runRegrade(regradeId);
  expect(await watchRegrade(puzzleId)).toEqual({ state: 'done', stage: null, done: 0, total: 0 });
  await agreeToRegrade({ puzzleId, memberId, regradeId, round: 1, agreed: [] });
  expect(await watchRegrade(puzzleId)).toEqual({ state: 'running', stage: 'writing', done: 0, total: 0 });
  await runRegrade(regradeId);
  expect(await findOpenRegrade(puzzleId)).toBeNull();
  expect((await watchRegrade(puzzleId)).state).toBe('done');
});
