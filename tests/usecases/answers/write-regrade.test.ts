import { describe, expect, test } from 'vitest';
import { sleep } from '#lib/machine/clock.ts';
import { randomToken } from '#lib/machine/tokens.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { appendLog, findBrokenLog } from '#lib/store/log.ts';
import { appendMarks, loadCurrentMark } from '#lib/store/marks.ts';
import { loadOpenRegrade, loadRegrade } from '#lib/store/regrades.ts';
import { loadStandings } from '#lib/store/standings.ts';
import { agreeToRegrade, askRegrade } from '#lib/usecases/answers/decide-regrade.ts';
import { gradeAgain } from '#lib/usecases/answers/grade-again.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { overruleMark } from '#lib/usecases/answers/overrule-mark.ts';
import { runRegrade } from '#lib/usecases/answers/run-regrade.ts';
import { withdrawAnswer } from '#lib/usecases/answers/withdraw-answer.ts';
import { writeRegrade } from '#lib/usecases/answers/write-regrade.ts';
import { buildMarked, marksOf, ruleAgainstAda, ruleForBoAndCy } from '../../support/build-regrade.ts';
import { send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

type Built = Awaited<ReturnType<typeof buildMarked>>;

/** Both rulings, a preview, and the host's yes to it and to some one by one; the worker has not begun. */
async function agreedTo(built: Built, agreed: readonly number[]): Promise<number> {
  const { puzzleId, memberId } = built;
  await ruleForBoAndCy(puzzleId, memberId);
  await ruleAgainstAda(puzzleId, memberId);
  await askRegrade({ puzzleId, memberId, reason: 'again' });
  const regradeId = (await loadOpenRegrade(db(), puzzleId))?.id ?? 0;
  await runRegrade(regradeId);
  const round = (await loadRegrade(db(), regradeId))?.scope.round ?? 0;
  const said = await agreeToRegrade({ puzzleId, memberId, regradeId, round, agreed });
  if (!said.ok) throw new Error(JSON.stringify(said.reason));
  return regradeId;
}

async function pointsInStandings({ episodeId }: Built): Promise<number[]> {
  const { rows } = await loadStandings(db(), { episodeId }, { after: null, size: 50 });
  return rows.map((row) => row.points);
}

const TO_START = { Ada: 'solved 5', Bo: 'unclear 0', Cy: 'unclear 0', Di: 'solved 5', Eve: 'wrong 0' };

describe('[A7] a regrade that the host said yes to', () => {
  test('[A7] raises by itself; a fall that the host did not say yes to keeps its mark, and is proposed again', async () => {
    const built = await buildMarked();
    const { puzzleId, memberId, answers } = built;
    const regradeId = await agreedTo(built, []);
    expect(await marksOf(puzzleId), 'until the worker comes').toEqual(TO_START);
    expect(await writeRegrade(regradeId)).toBe('applied');
    expect(await marksOf(puzzleId)).toEqual({ ...TO_START, Bo: 'solved 5', Cy: 'solved 5' });
    expect(await pointsInStandings(built)).toEqual([5, 5, 5, 5, 0]);
    expect(await writeRegrade(regradeId), 'twice is harmless').toBe('nothing');

    await askRegrade({ puzzleId, memberId, reason: 'once more' });
    const next = (await loadOpenRegrade(db(), puzzleId))?.id ?? 0;
    await runRegrade(next);
    const { changes, same } = (await loadRegrade(db(), next))?.stored?.preview ?? {};
    expect(changes?.map((one) => [one.answerId, one.wordFor])).toEqual([[answers.Ada, 'would-fall']]);
    expect(same).toBe(4);
  });

  test('[A7] a fall takes force on the host’s word for it', async () => {
    const built = await buildMarked();
    expect(await writeRegrade(await agreedTo(built, [built.answers.Ada]))).toBe('applied');
    expect(await marksOf(built.puzzleId)).toEqual({
      ...TO_START,
      Ada: 'wrong 0',
      Bo: 'solved 5',
      Cy: 'solved 5',
    });
    expect(await pointsInStandings(built)).toEqual([5, 5, 5, 0, 0]);
  });

  test('[I7] the log names each changed mark once, from and to, and who said yes', async () => {
    const built = await buildMarked();
    const { puzzleId, memberId, answers } = built;
    const regradeId = await agreedTo(built, [answers.Ada]);
    const before = await db().mark.findMany({ where: { puzzleId, isCurrent: true } });
    await writeRegrade(regradeId);
    const after = await db().mark.findMany({
      where: { puzzleId, isCurrent: true },
      orderBy: { answerId: 'asc' },
    });
    const entries = await db().log.findMany({ where: { puzzleId, kind: 'regrade-applied' } });
    expect(entries.map((entry) => entry.memberId)).toEqual([memberId]);
    const changed = after
      .filter((mark) => mark.regradeId === regradeId)
      .map((mark) => ({
        answer: mark.answerId,
        from: before.find((one) => one.answerId === mark.answerId)?.id,
        to: mark.id,
      }));
    expect(changed.map((one) => one.answer)).toEqual([answers.Ada, answers.Bo, answers.Cy]);
    expect(entries[0]?.details).toEqual({ regrade: regradeId, part: 1, parts: 1, declined: 0, changed });
    for (const { from, to } of changed)
      expect(await db().mark.findUniqueOrThrow({ where: { id: from ?? 0 } })).toMatchObject({
        isCurrent: false,
        supersededById: to,
      });
    expect(await findBrokenLog(db())).toEqual([]);
  });

  test('[I4] marks that say the same in newer words or versions are renewed as well, those that do not stay', async () => {
    const built = await buildMarked();
    const { answers } = built;
    const eve = await loadCurrentMark(db(), answers.Eve);
    const di = await loadCurrentMark(db(), answers.Di);
    if (eve === null) throw new Error('not marked');
    await appendMarks(db(), [{ ...eve, readerVersion: eve.readerVersion - 1 }]);
    await writeRegrade(await agreedTo(built, []));
    const now = await loadCurrentMark(db(), answers.Eve);
    expect(now).toEqual({ ...eve, id: now?.id, createdAt: now?.createdAt, regradeId: now?.regradeId });
    expect(now?.regradeId).not.toBeNull();
    expect(await loadCurrentMark(db(), answers.Di)).toEqual(di);
  });

  test("[A3] a person's word stays in force, and what the program finds now stands beside it", async () => {
    const built = await buildMarked();
    const { puzzleId, memberId, answers } = built;
    await overruleMark({ answerId: answers.Bo, outcome: 'slower', points: 2, why: 'half', memberId });
    await writeRegrade(await agreedTo(built, []));
    expect(await marksOf(puzzleId)).toMatchObject({ Bo: 'slower 2', Cy: 'solved 5' });
    const beside = await db().mark.findFirstOrThrow({
      where: { answerId: answers.Bo, madeBy: 'program' },
      orderBy: { id: 'desc' },
    });
    expect([beside.outcome, beside.isCurrent]).toEqual(['solved', false]);
  });
});

describe('[A7] what was previewed is what is written', () => {
  test('[A7] a mark overruled after the yes: nothing is written, another preview waits and says so', async () => {
    const built = await buildMarked();
    const { puzzleId, memberId, answers } = built;
    const regradeId = await agreedTo(built, [answers.Ada]);
    await overruleMark({ answerId: answers.Cy, outcome: 'wrong', points: 0, why: 'no', memberId });
    const before = await marksOf(puzzleId);
    expect(await writeRegrade(regradeId)).toBe('renewed');
    expect(await marksOf(puzzleId)).toEqual(before);
    const renewed = await loadRegrade(db(), regradeId);
    expect(renewed).toMatchObject({ state: 'previewed', scope: { isRenewed: true }, agreed: [answers.Ada] });
    expect(renewed?.stored?.preview.overruled).toEqual([answers.Cy]);
    const word = { puzzleId, memberId, regradeId, agreed: [answers.Ada] };
    const first = { ...word, round: 1 };
    expect(await agreeToRegrade(first)).toMatchObject({ reason: { code: 'preview-changed' } });
    expect(await agreeToRegrade({ ...word, round: renewed?.scope.round ?? 0 })).toMatchObject({ ok: true });
    expect(await writeRegrade(regradeId)).toBe('applied');
    expect(await marksOf(puzzleId)).toMatchObject({ Ada: 'wrong 0', Bo: 'solved 5', Cy: 'wrong 0' });
  });

  test('[A7] a name read out after the yes needs its own word', async () => {
    const built = await buildMarked();
    const { puzzleId, memberId, answers } = built;
    const regradeId = await agreedTo(built, []);
    const { solverId } = await db().answer.findUniqueOrThrow({ where: { id: answers.Bo } });
    await appendLog(db(), { kind: 'sheet-read', puzzleId, memberId, details: { solvers: [solverId] } });
    expect(await writeRegrade(regradeId)).toBe('renewed');
    const { changes } = (await loadRegrade(db(), regradeId))?.stored?.preview ?? {};
    expect(changes?.find((one) => one.answerId === answers.Bo)?.wordFor).toBe('read-out');
  });

  test('[A7] an answer withdrawn after the yes is not marked any more', async () => {
    const built = await buildMarked({ isRevealed: false });
    const { token } = await send(built.slug, 'Kf1!!', { name: 'Flo' });
    await markAnswers({ puzzleId: built.puzzleId });
    await db().$executeRaw`update puzzle set revealed_at = clock_timestamp() where id = ${built.puzzleId}`;
    const regradeId = await agreedTo(built, []);
    await withdrawAnswer({ token });
    expect(await writeRegrade(regradeId)).toBe('renewed');
    expect((await loadRegrade(db(), regradeId))?.stored?.preview.changes).toHaveLength(3);
  });

  test('[A7] answers that come in meanwhile are marked the ordinary way and hold nothing up', async () => {
    const built = await buildMarked({ isRevealed: false });
    const { puzzleId } = built;
    for (let number = 0; number < 3; number += 1) await send(built.slug, 'Kf1', { device: randomToken() });
    await db().$executeRaw`update puzzle set revealed_at = clock_timestamp() where id = ${puzzleId}`;
    const regradeId = await agreedTo(built, []);
    await Promise.all([markAnswers({ puzzleId }), writeRegrade(regradeId)]);
    await markAnswers({ puzzleId });
    expect((await loadRegrade(db(), regradeId))?.state).toBe('applied');
    expect(await db().mark.count({ where: { puzzleId, isCurrent: true } })).toBe(8);
    expect(await db().mark.count({ where: { puzzleId, isCurrent: true, outcome: 'unclear' } })).toBe(0);
  });

  test('[A7] a word that comes while it is written: all of it or nothing, and the word has its preview', async () => {
    const built = await buildMarked();
    const { puzzleId, memberId } = built;
    const regradeId = await agreedTo(built, []);
    const word = { answers: 'all', reason: 'more', memberId } as const;
    const [written] = await Promise.all([
      writeRegrade(regradeId),
      inTransaction((tx) => gradeAgain(tx, { id: puzzleId }, word)),
    ]);
    expect(await loadOpenRegrade(db(), puzzleId)).toMatchObject({ state: 'waiting' });
    const isWhole = written === 'applied';
    expect(['applied', 'nothing']).toContain(written);
    expect(await db().mark.count({ where: { regradeId } })).toBe(isWhole ? 2 : 0);
    expect(await marksOf(puzzleId)).toEqual(
      isWhole ? { ...TO_START, Bo: 'solved 5', Cy: 'solved 5' } : TO_START,
    );
  });

  test('[A7] set back before the end of the writing, nothing of it is kept', async () => {
    const built = await buildMarked();
    const { puzzleId, memberId } = built;
    const regradeId = await agreedTo(built, []);
    let written: Promise<string> | undefined;
    await inTransaction(async (tx) => {
      await gradeAgain(tx, { id: puzzleId }, { answers: 'all', reason: 'more', memberId });
      // Writes all its marks, then waits for the word that is being said.
      written = writeRegrade(regradeId);
      await sleep(1500);
    });
    expect(await written).toBe('nothing');
    expect(await marksOf(puzzleId)).toEqual(TO_START);
    expect(await db().mark.count({ where: { regradeId } })).toBe(0);
    expect(await loadRegrade(db(), regradeId)).toMatchObject({ state: 'waiting', scope: { round: 2 } });
  });

  test('[F12] while it is written readers see the old standings or the new ones, never a mix', async () => {
    const built = await buildMarked();
    const regradeId = await agreedTo(built, [built.answers.Ada]);
    const seen = new Set([(await pointsInStandings(built)).join()]);
    let isDone = false;
    const watching = (async () => {
      while (!isDone) seen.add((await pointsInStandings(built)).join());
    })();
    await writeRegrade(regradeId).finally(() => {
      isDone = true;
    });
    await watching;
    seen.add((await pointsInStandings(built)).join());
    expect([...seen]).toEqual(['5,5,0,0,0', '5,5,5,0,0']);
  });

  test('[F12] afterwards every mark is what a marking from nothing gives, flags, words and versions', async () => {
    const built = await buildMarked();
    await writeRegrade(await agreedTo(built, [built.answers.Ada]));
    const twin = await buildMarked({ isRevealed: false });
    await ruleForBoAndCy(twin.puzzleId, twin.memberId);
    await ruleAgainstAda(twin.puzzleId, twin.memberId);
    await askRegrade({ puzzleId: twin.puzzleId, memberId: twin.memberId, reason: 'again' });
    await markAnswers({ puzzleId: twin.puzzleId });
    expect(await contentsOf(built.puzzleId)).toEqual(await contentsOf(twin.puzzleId));
  });
});

/** Everything that the marks in force say, in the order of their answers, without numbers of rows. */
async function contentsOf(puzzleId: number) {
  const rows = await db().mark.findMany({
    where: { puzzleId, isCurrent: true },
    orderBy: { answerId: 'asc' },
    include: { answer: { select: { standing: true, work: true } } },
  });
  return rows.map((row) => ({
    ...row,
    ...{ id: 0, answerId: 0, puzzleId: 0, solverId: 0, regradeId: null, createdAt: null },
  }));
}
