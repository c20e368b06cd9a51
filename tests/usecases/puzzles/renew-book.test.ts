import { describe, expect, test } from 'vitest';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { appendBookRows, budgetsKey } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { extendBook } from '#lib/usecases/puzzles/extend-book.ts';
import type { Verify } from '#lib/usecases/puzzles/fill-book.ts';
import { bookVersionOf } from '#lib/usecases/puzzles/renew-book.ts';
import { amend, buildVerified, PAWN_RACE } from '../../support/amend.ts';
import { BACK_RANK, buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { revealNow, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { loggedOf } from '../../support/deeds.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

const EARLIER = '0.before-the-upgrade';
const ROOT = { fen: BACK_RANK, position: BACK_RANK.split(' ').slice(0, 4).join(' '), movesLeft: 1 };

/** An open puzzle whose book of one verdict an earlier version of the engine has written. */
async function buildEarlier() {
  const { puzzleId, slug } = await buildPuzzle(await buildShow());
  const rows = await verifyHere({ terms: MATE_IN_ONE, lacking: [{ ...ROOT, move: 'a1a8' }] });
  const earlier = rows.map((row) => ({ ...row, engineVersion: EARLIER }));
  await appendBookRows(db(), puzzleId, earlier, budgetsKey(MATE_IN_ONE));
  await db().$executeRaw`update puzzle set engine_version = ${EARLIER} where id = ${puzzleId}`;
  return { puzzleId, slug };
}

/** Marks as worker and bells would; gives how often the book was asked. */
async function markAll(puzzleId: number, verify: Verify = verifyHere): Promise<number> {
  for (let rounds = 0; rounds < 20; rounds += 1) {
    if ((await markAnswers({ puzzleId })).lacking === 0) return rounds;
    await extendBook({ puzzleId, verify });
  }
  throw new Error('Marking does not come to an end.');
}

const markOf = async (answerId: number) => {
  const { outcome, engineVersion } = await db().mark.findFirstOrThrow({
    where: { answerId, isCurrent: true },
  });
  return [outcome, engineVersion];
};
const versionOf = async (puzzleId: number, revision: number) => {
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  return puzzle === null ? null : bookVersionOf(db(), puzzle, revision);
};

describe('[V0] an upgrade of the engine while answers come in', () => {
  test('[V0] a verdict that is lacking is found by the new version, on a new book; everybody is marked by it', async () => {
    const { puzzleId, slug } = await buildEarlier();
    const known = await send(slug, 'Ra8#');
    await markAll(puzzleId);
    expect(await markOf(known.answerId)).toEqual(['solved', EARLIER]);
    const unforeseen = await send(slug, 'Kf1');
    expect(await markAll(puzzleId)).toBeLessThan(4);
    expect(await markOf(unforeseen.answerId)).toEqual(['wrong', ENGINE_VERSION]);
    expect(await markOf(known.answerId)).toEqual(['solved', ENGINE_VERSION]);
    expect(await versionOf(puzzleId, 1)).toBe(ENGINE_VERSION);
    const [, ...more] = (await loggedOf(puzzleId)).filter(([kind]) => kind === 'book-renewed');
    expect(more).toEqual([]);
    expect(await loggedOf(puzzleId)).toContainEqual([
      'book-renewed',
      { revision: 1, from: EARLIER, to: ENGINE_VERSION, claim: 'true', keys: 1, isTaken: true },
    ]);
  });

  test('[A6] between two revisions: answers to the former terms are marked on a new book of those', async () => {
    const puzzle = await buildVerified(PAWN_RACE);
    const { puzzleId, slug } = puzzle;
    await db().$executeRaw`update puzzle set engine_version = ${EARLIER} where id = ${puzzleId}`;
    await amend(puzzle, { task: { kind: 'mate', moves: 4 } });
    expect(await versionOf(puzzleId, 1)).toBe(EARLIER);
    const { answerId } = await send(slug, '1.c6 a6 2.c7', { seen: 1 });
    await markAll(puzzleId);
    expect(await markOf(answerId)).toEqual(['solved', ENGINE_VERSION]);
    expect(await versionOf(puzzleId, 1)).toBe(ENGINE_VERSION);
  });

  test('[A7] after the reveal no mark changes by it without the host', async () => {
    const { puzzleId, slug } = await buildEarlier();
    const known = await send(slug, 'Ra8#');
    await markAll(puzzleId);
    const unforeseen = await send(slug, 'Kf1');
    await markAnswers({ puzzleId });
    await revealNow(puzzleId);
    await extendBook({ puzzleId, verify: verifyHere });
    await markAll(puzzleId);
    expect(await markOf(known.answerId)).toEqual(['solved', EARLIER]);
    expect(await markOf(unforeseen.answerId)).toEqual(['wrong', ENGINE_VERSION]);
    expect(await db().regrade.count({ where: { puzzleId, state: 'waiting' } })).toBe(1);
  });

  test('[F11] a book that cannot be made anew is tried three times; then its answers go to the host', async () => {
    const { puzzleId, slug } = await buildEarlier();
    const { answerId } = await send(slug, 'Kf1');
    const dying: Verify = () => Promise.reject(new Error('the thread has gone'));
    await markAnswers({ puzzleId });
    for (const _ of [1, 2])
      await expect(extendBook({ puzzleId, verify: dying })).rejects.toThrow('the thread has gone');
    expect(await extendBook({ puzzleId, verify: dying })).toBe(0);
    expect(await markAnswers({ puzzleId })).toMatchObject({ marked: 1, lacking: 0 });
    expect(await markOf(answerId)).toEqual(['unclear', EARLIER]);
  });

  test('[A5] where the claim does not stand by it the former book stays, and what it lacks needs the host', async () => {
    const { puzzleId, slug } = await buildEarlier();
    const unforeseen = await send(slug, 'Kf1');
    const known = await send(slug, 'Ra8#');
    let asked = 0;
    const doubting: Verify = async (question) => {
      asked += 1;
      return (await verifyHere(question)).map((row) => ({ ...row, verdict: 'slips' }));
    };
    expect(await markAll(puzzleId, doubting)).toBeLessThan(4);
    expect(await markOf(known.answerId)).toEqual(['solved', EARLIER]);
    expect(await markOf(unforeseen.answerId)).toEqual(['unclear', EARLIER]);
    expect(asked).toBeLessThan(20);
    // Found out once, told once, however many ask after that.
    const before = asked;
    const another = await send(slug, 'Kh1');
    await markAll(puzzleId, doubting);
    expect(await markOf(another.answerId)).toEqual(['unclear', EARLIER]);
    expect(asked).toBe(before);
    expect((await loggedOf(puzzleId)).filter(([kind]) => kind === 'book-renewed')).toHaveLength(1);
    expect(await loggedOf(puzzleId)).toContainEqual([
      'book-renewed',
      expect.objectContaining({ claim: 'false', isTaken: false }),
    ]);
    expect(await db().puzzle.findUnique({ where: { id: puzzleId } })).toMatchObject({
      claim: 'true',
      engineVersion: EARLIER,
    });
  });
});
