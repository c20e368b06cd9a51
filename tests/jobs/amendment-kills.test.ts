// A worker that is killed in the middle of verifying an amendment, with the real queue and the real engine (rule A6).

import { afterEach, expect, test } from 'vitest';
import { sleep } from '#lib/machine/clock.ts';
import { loadOpenAmendment } from '#lib/store/amendments.ts';
import { db } from '#lib/store/client.ts';
import { findBrokenLog } from '#lib/store/log.ts';
import { proposeAmendment } from '#lib/usecases/puzzles/propose-amendment.ts';
import { putAmendmentInForce } from '#lib/usecases/puzzles/put-amendment-in-force.ts';
import { amend, buildVerified, PAWN_RACE, typedAmendment } from '../support/amend.ts';
import { givenDatabase } from '../support/database.ts';
import { loggedOf } from '../support/deeds.ts';
import { accepted } from '../support/positions.ts';
import { startWorker, type WorkerProcess } from '../support/worker-process.ts';

const database = givenDatabase();
const running: WorkerProcess[] = [];

afterEach(async () => {
  for (const worker of running.splice(0)) await worker.stop();
  await db().$executeRaw`delete from worker_beat`;
});

function worker(): WorkerProcess {
  const started = startWorker(database);
  running.push(started);
  return started;
}

const LONGER = { task: { kind: 'mate', moves: 5 } } as const;

/** What the book says under the new terms, without numbers of rows. */
async function newVerdicts(puzzleId: number): Promise<string[]> {
  const rows = await db().bookRow.findMany({ where: { puzzleId, movesLeft: { gt: 3 } } });
  return rows
    .map(({ position, movesLeft, move, verdict }) => `${position} ${movesLeft} ${move} ${verdict}`)
    .sort();
}

test('[A6] killed while an amendment is verified: nothing public moves, and the next worker goes on to the same end', async () => {
  const puzzle = await buildVerified(PAWN_RACE);
  const { puzzleId, memberId } = puzzle;
  const before = await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } });
  accepted(await proposeAmendment(await typedAmendment(puzzle, LONGER)));
  const dying = worker();
  for (let tries = 0; tries < 3000 && (await newVerdicts(puzzleId)).length === 0; tries += 1) await sleep(5);
  await dying.kill();
  const kept = await newVerdicts(puzzleId);
  expect(kept.length).toBeGreaterThan(0);
  expect((await loadOpenAmendment(db(), puzzleId))?.state).toBe('waiting');
  expect(await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } })).toEqual(before);

  worker();
  const start = performance.now();
  const state = async () => (await loadOpenAmendment(db(), puzzleId))?.state;
  while ((await state()) !== 'verified' && performance.now() - start < 60_000) await sleep(50);
  expect(await state()).toBe('verified');
  const found = await newVerdicts(puzzleId);
  expect(found.length).toBeGreaterThan(kept.length);
  expect(found).toEqual(expect.arrayContaining(kept));
  expect((await loggedOf(puzzleId)).filter(([kind]) => kind === 'amendment-verified')).toHaveLength(1);
  expect(accepted(await putAmendmentInForce({ puzzleId, memberId, overrideReason: null }))).toBe(2);
  expect(await findBrokenLog(db())).toEqual([]);

  const twin = await buildVerified(PAWN_RACE);
  await amend(twin, LONGER);
  expect(found, 'as without a kill').toEqual(await newVerdicts(twin.puzzleId));
}, 120_000);
