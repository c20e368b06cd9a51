import { describe, expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { appendLog, findBrokenLog } from '#lib/store/log.ts';
import { buildPuzzle, buildShow } from '../support/build-show.ts';
import { givenDatabase } from '../support/database.ts';

givenDatabase();

async function buildAnswer(text = 'Ra8#') {
  const place = await buildShow();
  const { puzzleId } = await buildPuzzle(place);
  const solver = await db().solver.create({ data: { showId: place.showId, name: 'Ada' } });
  const answer = await db().answer.create({
    data: { puzzleId, solverId: solver.id, text, name: 'Ada', channel: 'page', clientKey: `key${puzzleId}` },
  });
  return { ...place, puzzleId, solverId: solver.id, answerId: answer.id };
}

function markOf(place: { answerId: number; puzzleId: number; solverId: number }) {
  return {
    answerId: place.answerId,
    puzzleId: place.puzzleId,
    solverId: place.solverId,
    outcome: 'solved',
    flags: [],
    points: 5,
    p: 1,
    r: 1,
    hasLine: false,
    line: [],
    verdicts: [],
    reason: { code: 'solved', params: {} },
    scheme: 'full-line',
    schemeVersion: 1,
    readerVersion: 1,
    bookVersion: '1/1',
    madeBy: 'program',
  };
}

describe('what the database itself refuses', () => {
  test('[P2] a second counted answer of one solver to one puzzle', async () => {
    const place = await buildAnswer();
    await db().answer.update({ where: { id: place.answerId }, data: { standing: 'counted' } });
    const second = db().answer.create({
      data: {
        puzzleId: place.puzzleId,
        solverId: place.solverId,
        text: 'again',
        channel: 'page',
        clientKey: `second${place.answerId}`,
        standing: 'counted',
      },
    });
    await expect(second).rejects.toThrow(/answer_one_counted|Unique constraint/);
  });

  test('[O] a second current mark of one answer', async () => {
    const place = await buildAnswer();
    await db().mark.create({ data: markOf(place) });
    await expect(db().mark.create({ data: markOf(place) })).rejects.toThrow(/Unique constraint/);
  });

  test('an identity with two solvers', async () => {
    const { showId, solverId } = await buildAnswer();
    const other = await db().solver.create({ data: { showId } });
    const identity = { showId, kind: 'device', key: 'the same cookie' };
    await db().solverIdentity.create({ data: { ...identity, solverId } });
    await expect(db().solverIdentity.create({ data: { ...identity, solverId: other.id } })).rejects.toThrow(
      /Unique constraint/,
    );
  });

  test('another text, time or key under an answer', async () => {
    const { answerId } = await buildAnswer();
    const change = (data: object) => db().answer.update({ where: { id: answerId }, data });
    await expect(change({ text: 'Kf1' })).rejects.toThrow(/never changed/);
    await expect(change({ receivedAt: new Date(0) })).rejects.toThrow(/never changed/);
    await expect(change({ clientKey: 'other' })).rejects.toThrow(/never changed/);
    await expect(change({ name: 'Eve' })).rejects.toThrow(/never changed/);
  });

  test('an erased text without a withdrawal, and a withdrawal that keeps the name', async () => {
    const { answerId } = await buildAnswer();
    const change = (data: object) => db().answer.update({ where: { id: answerId }, data });
    await expect(change({ text: '' })).rejects.toThrow(/never changed/);
    const withdrawn = { withdrawnAt: new Date(), standing: 'withdrawn', text: '' };
    await expect(change(withdrawn)).rejects.toThrow(/answer_withdrawn_is_erased/);
    await change({ ...withdrawn, name: null });
    await expect(change({ text: 'Ra8#' })).rejects.toThrow(/never changed/);
  });

  test('a changed or revived mark', async () => {
    const place = await buildAnswer();
    const { id } = await db().mark.create({ data: markOf(place) });
    await expect(db().mark.update({ where: { id }, data: { points: 0 } })).rejects.toThrow(/never changed/);
    await db().mark.update({ where: { id }, data: { isCurrent: false } });
    await expect(db().mark.update({ where: { id }, data: { isCurrent: true } })).rejects.toThrow(
      /never changed/,
    );
  });

  test('[A5] a published puzzle whose claim is false, or unclear without a reason', async () => {
    const place = await buildShow();
    const { puzzleId } = await buildPuzzle(place, { isPublished: false });
    const publish = (claim: string) =>
      db().puzzle.update({
        where: { id: puzzleId },
        data: { claim, verifiedAt: new Date(), publishedAt: new Date() },
      });
    await expect(publish('false')).rejects.toThrow(/puzzle_published_is_verified/);
    await expect(publish('unclear')).rejects.toThrow(/puzzle_published_is_verified/);
    await publish('true');
  });

  test('two verdicts of one book on one move, with moves left or without', async () => {
    const { puzzleId } = await buildAnswer();
    for (const movesLeft of [2, null]) {
      const row = {
        puzzleId,
        position: '8/8/8/8/8/8/8/8 w - -',
        movesLeft,
        move: 'a1a2',
        verdict: 'holds',
        depth: 0,
        nodes: 1,
        evidence: {},
        checkStatus: 'passed',
        replies: [],
        adequate: [],
        engineVersion: '1',
        budgets: '1/1',
      };
      await db().bookRow.create({ data: row });
      await expect(db().bookRow.create({ data: row })).rejects.toThrow(/Unique constraint/);
    }
  });
});

describe('the log', () => {
  test('[A3] refuses UPDATE, DELETE and TRUNCATE', async () => {
    await appendLog(db(), { kind: 'show-changed', memberId: 1 });
    await expect(db().log.updateMany({ data: { kind: 'other' } })).rejects.toThrow(/append-only/);
    await expect(db().log.deleteMany()).rejects.toThrow(/append-only/);
    await expect(db().$executeRaw`truncate log`).rejects.toThrow(/append-only/);
  });

  test('[A3] chains its entries without gaps, however many write at once', async () => {
    await Promise.all(
      Array.from({ length: 40 }, (_, number) => appendLog(db(), { kind: 'show-changed', memberId: number })),
    );
    const entries = await db().log.findMany({ orderBy: { id: 'asc' } });
    expect(entries.map((entry) => entry.id)).toEqual(entries.map((_, place) => place + 1));
    for (const [place, entry] of entries.entries())
      expect(entry.prevHash).toBe(entries[place - 1]?.hash ?? '0'.repeat(64));
    expect(await findBrokenLog(db())).toEqual([]);
  });

  test('[A3] a forged entry is found', async () => {
    const { id } = await db().log.findFirstOrThrow({ orderBy: { id: 'asc' } });
    await db().$executeRaw`alter table log disable trigger log_is_kept`;
    await db().log.update({ where: { id }, data: { memberId: 666 } });
    await db().$executeRaw`alter table log enable trigger log_is_kept`;
    expect(await findBrokenLog(db())).toEqual([id]);
  });
});
