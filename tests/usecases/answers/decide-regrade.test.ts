import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { findBrokenLog } from '#lib/store/log.ts';
import { loadOpenRegrade, loadRegrade } from '#lib/store/regrades.ts';
import { agreeToRegrade, askRegrade, cancelRegrade } from '#lib/usecases/answers/decide-regrade.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { runRegrade } from '#lib/usecases/answers/run-regrade.ts';
import { buildMarked, marksOf, reveal, ruleAgainstAda, ruleForBoAndCy } from '../../support/build-regrade.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { loggedOf } from '../../support/deeds.ts';

givenDatabase();

async function previewed() {
  const built = await buildMarked();
  const { puzzleId, memberId } = built;
  await ruleForBoAndCy(puzzleId, memberId);
  await ruleAgainstAda(puzzleId, memberId);
  expect(await askRegrade({ puzzleId, memberId, reason: ' a viewer wrote in ' })).toEqual({
    ok: true,
    value: { answers: 5, isPreviewed: true },
  });
  const regrade = await loadOpenRegrade(db(), puzzleId);
  if (regrade === null) throw new Error('no regrade');
  expect(await runRegrade(regrade.id)).toBe('previewed');
  return { ...built, regradeId: regrade.id, round: regrade.scope.round };
}

test('[A7] before the reveal everybody is simply marked again, without a preview', async () => {
  const { puzzleId, memberId } = await buildMarked({ isRevealed: false });
  await ruleForBoAndCy(puzzleId, memberId);
  const value = { answers: 5, isPreviewed: false };
  expect(await askRegrade({ puzzleId, memberId, reason: 'x' })).toEqual({ ok: true, value });
  expect(await loadOpenRegrade(db(), puzzleId)).toBeNull();
  await markAnswers({ puzzleId });
  expect(await marksOf(puzzleId)).toMatchObject({ Bo: 'solved 5', Cy: 'solved 5', Eve: 'wrong 0' });
});

test('[A7] a second asking refreshes the regrade that is open', async () => {
  const { puzzleId, memberId, regradeId, round } = await previewed();
  await askRegrade({ puzzleId, memberId, reason: 'once more' });
  const open = await loadOpenRegrade(db(), puzzleId);
  expect([open?.id, open?.state, open?.scope.round]).toEqual([regradeId, 'waiting', round + 1]);
  expect(await agreeToRegrade({ puzzleId, memberId, regradeId, round, agreed: [] })).toMatchObject({
    reason: { code: 'not-previewed' },
  });
  await runRegrade(regradeId);
  const agreed = { puzzleId, memberId, regradeId, agreed: [] };
  expect(await agreeToRegrade({ ...agreed, round })).toMatchObject({ reason: { code: 'preview-changed' } });
  expect(await agreeToRegrade({ ...agreed, round: round + 1 })).toEqual({ ok: true, value: null });
});

test('[A7] yes to a fall must be one that the preview asks about', async () => {
  const { puzzleId, memberId, regradeId, round, answers } = await previewed();
  const word = { puzzleId, memberId, regradeId, round };
  const stray = await agreeToRegrade({ ...word, agreed: [answers.Bo] });
  expect(stray).toMatchObject({ reason: { code: 'not-in-preview', answerId: answers.Bo } });
  expect(await agreeToRegrade({ ...word, agreed: [answers.Ada] })).toMatchObject({ ok: true });
  expect(await agreeToRegrade({ ...word, agreed: [] })).toMatchObject({ reason: { code: 'not-previewed' } });
  const entries = await loggedOf(puzzleId);
  expect(entries.at(-1)).toEqual(['regrade-agreed', { regrade: regradeId, agreed: [answers.Ada] }]);
});

test('[A7] cancelled, every mark stays, the log says so, and another can be asked for', async () => {
  const { puzzleId, memberId, regradeId, round } = await previewed();
  const before = await marksOf(puzzleId);
  expect(await cancelRegrade({ puzzleId, memberId, regradeId })).toEqual({ ok: true, value: null });
  expect((await loadRegrade(db(), regradeId))?.state).toBe('cancelled');
  expect(await runRegrade(regradeId)).toBe('cancelled');
  expect(await marksOf(puzzleId)).toEqual(before);
  expect((await loggedOf(puzzleId)).at(-1)).toEqual(['regrade-cancelled', { regrade: regradeId }]);
  expect(await findBrokenLog(db())).toEqual([]);
  const word = { puzzleId, memberId, regradeId };
  expect(await cancelRegrade(word)).toMatchObject({ reason: { code: 'not-previewed' } });
  expect(await agreeToRegrade({ ...word, round, agreed: [] })).toMatchObject({
    reason: { code: 'not-previewed' },
  });
  expect(await askRegrade({ puzzleId, memberId, reason: 'again' })).toMatchObject({ ok: true });
  expect((await loadOpenRegrade(db(), puzzleId))?.id).not.toBe(regradeId);
});

test('[A7] the host can still think better of it until it has been written', async () => {
  const { puzzleId, memberId, regradeId, round } = await previewed();
  const before = await marksOf(puzzleId);
  const word = { puzzleId, memberId, regradeId };
  expect(await agreeToRegrade({ ...word, round, agreed: [] })).toMatchObject({ ok: true });
  const [cancelled] = await Promise.all([cancelRegrade(word), runRegrade(regradeId)]);
  const { state } = (await loadRegrade(db(), regradeId)) ?? {};
  expect(state).toBe(cancelled.ok ? 'cancelled' : 'applied');
  expect(await db().mark.count({ where: { regradeId } })).toBe(cancelled.ok ? 0 : 2);
  if (cancelled.ok) expect(await marksOf(puzzleId)).toEqual(before);
});

test('[A8] a regrade of another puzzle is none', async () => {
  const { memberId, regradeId, round } = await previewed();
  const other = await buildMarked();
  const word = { puzzleId: other.puzzleId, memberId, regradeId };
  const unknown = { reason: { code: 'unknown-regrade' } };
  expect(await cancelRegrade(word)).toMatchObject(unknown);
  expect(await agreeToRegrade({ ...word, round, agreed: [] })).toMatchObject(unknown);
});

test('is refused without a reason, for a puzzle that is not published, void, or none', async () => {
  const show = await buildShow();
  const { puzzleId } = await buildPuzzle(show, { isPublished: false });
  const { memberId } = show;
  const asked = (reason: string, id = puzzleId) => askRegrade({ puzzleId: id, memberId, reason });
  expect(await asked(' ')).toMatchObject({ reason: { code: 'reason-empty' } });
  expect(await asked('x')).toMatchObject({ reason: { code: 'not-published' } });
  expect(await asked('x', 999_999)).toMatchObject({ reason: { code: 'unknown-puzzle' } });
  const { puzzleId: voided } = await buildPuzzle(show);
  await reveal(voided);
  await db().$executeRaw`update puzzle set voided_at = clock_timestamp() where id = ${voided}`;
  expect(await asked('x', voided)).toMatchObject({ reason: { code: 'void' } });
});
