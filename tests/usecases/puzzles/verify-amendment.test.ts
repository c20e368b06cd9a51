import { expect, test } from 'vitest';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { loadOpenAmendment } from '#lib/store/amendments.ts';
import { db } from '#lib/store/client.ts';
import { loadProgress } from '#lib/store/progress.ts';
import type { Verify } from '#lib/usecases/puzzles/fill-book.ts';
import { cancelAmendment, proposeAmendment } from '#lib/usecases/puzzles/propose-amendment.ts';
import { verifyAmendment } from '#lib/usecases/puzzles/verify-amendment.ts';
import { buildVerified, PAWN_RACE, typedAmendment } from '../../support/amend.ts';
import { givenDatabase } from '../../support/database.ts';
import { loggedOf } from '../../support/deeds.ts';
import { verifyHere } from '../../support/engine-in-process.ts';
import { accepted } from '../../support/positions.ts';

givenDatabase();

async function asked(change: Parameters<typeof typedAmendment>[1]) {
  const puzzle = await buildVerified(PAWN_RACE);
  accepted(await proposeAmendment(await typedAmendment(puzzle, change)));
  return puzzle;
}

test('[A5] the new claim is verified into the same book; the puzzle itself stays as it is', async () => {
  const { puzzleId } = await asked({ task: { kind: 'mate', moves: 4 } });
  const before = await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } });
  await verifyAmendment({ puzzleId, verify: verifyHere });
  expect(await loadOpenAmendment(db(), puzzleId)).toMatchObject({
    state: 'verified',
    claim: 'true',
    engineVersion: ENGINE_VERSION,
    report: { v: 1 },
    failure: null,
  });
  expect(await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } })).toEqual(before);
  const lengths = await db().bookRow.findMany({
    where: { puzzleId },
    distinct: ['movesLeft'],
    select: { movesLeft: true },
  });
  expect(lengths.map((row) => row.movesLeft)).toEqual(expect.arrayContaining([3, 4]));
  expect((await loadProgress(db(), puzzleId))?.state).toBe('done');
  expect((await loggedOf(puzzleId)).at(-1)).toMatchObject(['amendment-verified', { claim: 'true' }]);
});

test('[A5] a claim that is false comes out as such', async () => {
  const { puzzleId } = await asked({ task: { kind: 'mate', moves: 2 } });
  await verifyAmendment({ puzzleId, verify: verifyHere });
  expect((await loadOpenAmendment(db(), puzzleId))?.claim).toBe('false');
});

test('[F2] a verification that dies in the middle says so, and goes on from the rows that are there', async () => {
  const { puzzleId } = await asked({ fen: '7k/p4K1p/7P/2P5/8/8/3P4/8 w - - 0 1' });
  let rounds = 0;
  const dying: Verify = async (question) => {
    rounds += 1;
    if (rounds > 2) throw new Error('the thread has gone');
    return verifyHere(question);
  };
  await expect(verifyAmendment({ puzzleId, verify: dying })).rejects.toThrow('the thread has gone');
  expect(await loadOpenAmendment(db(), puzzleId)).toMatchObject({
    state: 'failed',
    failure: 'the thread has gone',
  });
  const kept = await db().bookRow.count({ where: { puzzleId } });
  const moves: string[] = [];
  const counting: Verify = async (question) => {
    moves.push(
      ...question.lacking.map(({ position, movesLeft, move }) => `${position} ${movesLeft} ${move}`),
    );
    return verifyHere(question);
  };
  await verifyAmendment({ puzzleId, verify: counting });
  const rows = await db().bookRow.findMany({ where: { puzzleId } });
  expect(rows.length).toBe(kept + moves.length);
  expect(await loadOpenAmendment(db(), puzzleId)).toMatchObject({
    state: 'verified',
    claim: 'true',
    failure: null,
  });
  await verifyAmendment({ puzzleId, verify: () => Promise.reject(new Error('was asked again')) });
});

test('[A6] cancelled while it is verified: the work stops at the next round and nothing is kept of it', async () => {
  const { puzzleId, memberId } = await asked({ task: { kind: 'mate', moves: 4 } });
  const cancelling: Verify = async (question) => {
    await cancelAmendment({ puzzleId, memberId });
    return verifyHere(question);
  };
  await verifyAmendment({ puzzleId, verify: cancelling });
  expect(await loadOpenAmendment(db(), puzzleId)).toBeNull();
  const row = await db().amendment.findFirstOrThrow({ where: { puzzleId } });
  expect(row).toMatchObject({ state: 'cancelled', claim: null });
});

test('without an amendment in the making nothing is asked', async () => {
  const never = () => Promise.reject(new Error('was asked'));
  await verifyAmendment({ puzzleId: 987_654, verify: never });
});
