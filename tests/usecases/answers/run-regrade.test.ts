import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { listRegradesToRun, loadOpenRegrade, loadRegrade } from '#lib/store/regrades.ts';
import { cancelRegrade } from '#lib/usecases/answers/decide-regrade.ts';
import { gradeAgain } from '#lib/usecases/answers/grade-again.ts';
import { runRegrade } from '#lib/usecases/answers/run-regrade.ts';
import { extendBook } from '#lib/usecases/puzzles/extend-book.ts';
import { buildMarked, marksOf, ruleForBoAndCy } from '../../support/build-regrade.ts';
import { buildHealey, markEverything, revealNow, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { jobsOf } from '../../support/deeds.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

async function asked(puzzleId: number, memberId: number | null = null): Promise<number> {
  await gradeAgain(db(), { id: puzzleId }, { answers: 'all', reason: 'again', memberId });
  return (await loadOpenRegrade(db(), puzzleId))?.id ?? 0;
}

test('[A7] the worker stores what would change, counts as it goes, and writes no mark', async () => {
  const { puzzleId, memberId } = await buildMarked();
  await ruleForBoAndCy(puzzleId, memberId);
  const regradeId = await asked(puzzleId, memberId);
  expect(await listRegradesToRun(db())).toContain(regradeId);
  const marks = await db().mark.count({ where: { puzzleId } });
  expect(await runRegrade(regradeId)).toBe('previewed');
  const regrade = await loadOpenRegrade(db(), puzzleId);
  expect([regrade?.done, regrade?.total]).toEqual([5, 5]);
  expect(regrade?.stored?.preview.changes).toHaveLength(2);
  expect(await db().mark.count({ where: { puzzleId } })).toBe(marks);
  expect(await listRegradesToRun(db())).not.toContain(regradeId);
  expect(await runRegrade(regradeId), 'a second run changes nothing').toBe('previewed');
});

test('[A7] what the book lacks is asked for in nobody’s name, and the job is rung for when it is there', async () => {
  const { slug, puzzleId, terms } = await buildHealey();
  const { answerId } = await send(slug, '1.Rh1 Nc5 2.Qb1', { name: 'Ilse' });
  await markEverything(puzzleId, terms);
  await revealNow(puzzleId);
  // A new budget: a book of its own, which has nothing yet.
  await db().puzzle.update({ where: { id: puzzleId }, data: { proofNodes: 19_000_000 } });
  const before = await db().answer.findUniqueOrThrow({ where: { id: answerId } });
  const regradeId = await asked(puzzleId);
  let rounds = 0;
  while ((await runRegrade(regradeId)) === 'waiting' && rounds < 20) {
    rounds += 1;
    expect(await db().want.count({ where: { puzzleId, answerId: null } })).toBeGreaterThan(0);
    expect(await listRegradesToRun(db()), 'while the book grows there is nothing to run').toEqual([]);
    await db().$executeRaw`delete from graphile_worker._private_jobs`;
    await extendBook({ puzzleId, verify: verifyHere });
    expect([...(await jobsOf(regradeId)).keys()]).toContain('regrade');
  }
  expect(rounds).toBeGreaterThan(0);
  expect(await db().answer.findUniqueOrThrow({ where: { id: answerId } })).toEqual(before);
  expect((await loadOpenRegrade(db(), puzzleId))?.stored?.preview).toMatchObject({ changes: [], same: 1 });
});

test('[A7] a preview that was overtaken while it was worked out is not stored', async () => {
  const { puzzleId, memberId } = await buildMarked();
  const regradeId = await asked(puzzleId, memberId);
  const running = runRegrade(regradeId);
  await gradeAgain(db(), { id: puzzleId }, { answers: 'all', reason: 'more', memberId });
  await running;
  const regrade = await loadOpenRegrade(db(), puzzleId);
  // Whichever came first, what is stored belongs to the newest word.
  expect([regrade?.scope.round, regrade?.reason]).toEqual([2, 'again; more']);
  expect(await runRegrade(regradeId)).toBe('previewed');
  expect(await marksOf(puzzleId)).toMatchObject({ Bo: 'unclear 0' });
});

test('[F12] cancelled half way, every mark is as it was and nothing is stored', async () => {
  const { puzzleId, memberId } = await buildMarked();
  await ruleForBoAndCy(puzzleId, memberId);
  const before = await marksOf(puzzleId);
  const regradeId = await asked(puzzleId, memberId);
  const running = runRegrade(regradeId);
  expect(await cancelRegrade({ puzzleId, memberId, regradeId })).toEqual({ ok: true, value: null });
  await running;
  expect(await loadRegrade(db(), regradeId)).toMatchObject({ state: 'cancelled' });
  expect(await runRegrade(regradeId)).toBe('cancelled');
  expect(await marksOf(puzzleId)).toEqual(before);
  expect(await db().mark.count({ where: { regradeId } })).toBe(0);
});

test('a regrade that is decided, and a number that is none, are left alone', async () => {
  const { puzzleId } = await buildMarked();
  const regradeId = await asked(puzzleId);
  await db().$executeRaw`update regrade set state = 'cancelled', decided_at = now() where id = ${regradeId}`;
  expect(await runRegrade(regradeId)).toBe('cancelled');
  expect(await runRegrade(999_999)).toBeNull();
});

test('[A7] a book that never answers does not keep a regrade for ever: those answers keep their marks', async () => {
  const { slug, puzzleId, terms } = await buildHealey();
  await send(slug, '1.Rh1 Nc5 2.Qb1', { name: 'Ilse' });
  await markEverything(puzzleId, terms);
  await revealNow(puzzleId);
  await db().puzzle.update({ where: { id: puzzleId }, data: { proofNodes: 19_000_000 } });
  const regradeId = await asked(puzzleId);
  let rounds = 0;
  while ((await runRegrade(regradeId)) === 'waiting' && rounds < 100) {
    rounds += 1;
    await extendBook({ puzzleId, verify: async () => [] });
  }
  expect(rounds).toBe(60);
  const { preview, unjudged } = (await loadOpenRegrade(db(), puzzleId))?.stored ?? {};
  expect([preview?.changes, unjudged]).toEqual([[], 1]);
});
