import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { createRandom } from '#lib/kit/random.ts';
import { sleep } from '#lib/machine/clock.ts';
import { parseConfig } from '#lib/machine/config.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { appendAnswer } from '#lib/store/answers.ts';
import { takenUpWithinSeconds } from '#lib/store/beats.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { findBrokenLog } from '#lib/store/log.ts';
import { createSolver } from '#lib/store/solvers.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { extendBook } from '#lib/usecases/puzzles/extend-book.ts';
import { verifyPuzzle } from '#lib/usecases/puzzles/verify-puzzle.ts';
import { buildPuzzle, buildShow } from '../support/build-show.ts';
import { givenDatabase } from '../support/database.ts';
import { verifyHere } from '../support/engine-in-process.ts';
import { startWorker, type WorkerProcess } from '../support/worker-process.ts';

const SEED = 20_251;
const KILLS = 20;
const ANSWERS = 3000;
const PAUSE_MS = 150;

// Thomas R. Dawson, Illustrated London News, 1913: 1.Rf1.
const TERMS: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: 'nk6/brpp2p1/brp4p/1p6/8/8/8/4K2R w - - 0 1',
  task: { kind: 'mate', moves: 2 },
  published: ['1.Rf1'],
};

const TEXTS = [
  'Rf1',
  '1.Rf1 and mates',
  'Tf1!',
  'Th1-f1',
  'h1f1',
  'Rxh6',
  '1. Rxh6 gxh6 2. Ke2',
  'Rg1 Kc8 Rf1',
  'O-O',
  'Ke2, then Rf1',
  'R?1',
  'what a lovely show',
  'Rf1 Kc8 Rf8',
  'Kd1 Kc8 Kc1 Kd8 Kb1',
];

const database = givenDatabase();
let place = { puzzleId: 0, twinId: 0 };

/** The same answers to two puzzles that differ in nothing else. */
beforeAll(async () => {
  const show = await buildShow();
  const ids: number[] = [];
  for (let copy = 0; copy < 2; copy += 1) {
    const { puzzleId } = await buildPuzzle(show, { terms: TERMS });
    await verifyPuzzle({ puzzleId, verify: verifyHere });
    ids.push(puzzleId);
    const random = createRandom(SEED);
    await inTransaction(async (tx) => {
      let solverId = 0;
      for (let number = 0; number < ANSWERS; number += 1) {
        // Every tenth answer is a second one of the same solver.
        if (number % 10 !== 1)
          solverId = await createSolver(tx, { showId: show.showId, name: null, isSample: false });
        await appendAnswer(tx, {
          puzzleId,
          solverId,
          text: random.pick(TEXTS),
          name: null,
          meant: null,
          channel: 'page',
          clientKey: `${copy}-${number}`,
          receiptHash: null,
          locale: null,
        });
      }
    }, 120_000);
  }
  place = { puzzleId: ids[0] ?? 0, twinId: ids[1] ?? 0 };
}, 180_000);

afterAll(async () => {
  await db().$executeRaw`delete from worker_beat`;
});

async function markHere(puzzleId: number): Promise<void> {
  for (let isLacking = true; isLacking; ) {
    isLacking = (await markAnswers({ puzzleId })).lacking > 0;
    if (isLacking) await extendBook({ puzzleId, verify: verifyHere });
  }
}

/** Everything that a mark says, in the order of the answers, without numbers of rows. */
async function opinions(puzzleId: number) {
  const rows = await db().answer.findMany({
    where: { puzzleId },
    orderBy: { id: 'asc' },
    include: { marks: { where: { isCurrent: true } } },
  });
  return rows.map(({ standing, work, marks }) =>
    JSON.stringify([
      standing,
      work,
      marks.map(({ outcome, flags, points, p, r, line }) => [outcome, flags, points, p, r, line]),
    ]),
  );
}

const marksSoFar = () => db().mark.count({ where: { puzzleId: place.puzzleId } });

/** One life of a worker, ended by SIGKILL; true where it was between "mark written" and "batch committed". */
async function liveAndDie(worker: WorkerProcess, random: ReturnType<typeof createRandom>): Promise<boolean> {
  await worker.waitFor('the worker is ready');
  const aimsAtPause = random.next() < 0.4;
  if (aimsAtPause) await Promise.race([worker.waitFor('pausing before the commit'), sleep(5000)]);
  await sleep(aimsAtPause ? random.int(PAUSE_MS / 3) : random.int(900));
  const pausesBefore = worker.lines().filter((line) => line.includes('pausing before the commit')).length;
  const before = await marksSoFar();
  await worker.kill();
  await sleep(50);
  const isInPause = pausesBefore > 0 && aimsAtPause;
  return isInPause && (await marksSoFar()) === before;
}

describe(`a worker that is killed ${KILLS} times (seed ${SEED})`, () => {
  test('loses nothing, marks nothing twice, and marks as if it had not been killed', async () => {
    await enqueue(db(), 'mark-answers', { puzzleId: place.puzzleId });
    const random = createRandom(SEED);
    let hits = 0;
    for (let kill = 0; kill < KILLS; kill += 1) {
      const worker = startWorker(database, { TAILPIECE_PAUSE_BEFORE_COMMIT_MS: String(PAUSE_MS) });
      if (await liveAndDie(worker, random)) hits += 1;
    }
    expect(hits, 'kills between "mark written" and "batch committed"').toBeGreaterThanOrEqual(3);

    const last = startWorker(database);
    const start = performance.now();
    const left = () => db().answer.count({ where: { puzzleId: place.puzzleId, work: { not: 'done' } } });
    while ((await left()) > 0 && performance.now() - start < 120_000) await sleep(100);
    await last.stop();
    expect(await left()).toBe(0);

    const all = await db().mark.findMany({ where: { puzzleId: place.puzzleId }, select: { answerId: true } });
    expect(all.length, 'marks in all').toBe(ANSWERS);
    expect(new Set(all.map((mark) => mark.answerId)).size).toBe(ANSWERS);

    await markHere(place.twinId);
    expect(await opinions(place.puzzleId)).toEqual(await opinions(place.twinId));
    expect(await findBrokenLog(db())).toEqual([]);
  }, 240_000);

  test('has its work taken up within 60 seconds, also where the queue holds it for the dead', async () => {
    const read = parseConfig({}, { cores: 2, folder: '/' });
    expect(takenUpWithinSeconds(read.ok ? read.value.beatSeconds : 999)).toBeLessThanOrEqual(60);

    const { puzzleId } = await buildPuzzle(await buildShow(), { terms: TERMS, isPublished: false });
    const dying = startWorker(database);
    await dying.waitFor('the worker is ready');
    await enqueue(db(), 'verify-puzzle', { puzzleId });
    const isBegun = async () =>
      (await db().progress.findUnique({ where: { puzzleId } }))?.state === 'running';
    while (!(await isBegun())) await sleep(10);
    await dying.kill();
    expect((await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } })).verifiedAt).toBeNull();

    const start = performance.now();
    const heir = startWorker(database);
    const isDone = async () =>
      (await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } })).engineVersion === ENGINE_VERSION;
    while (!(await isDone()) && performance.now() - start < 60_000) await sleep(100);
    const seconds = (performance.now() - start) / 1000;
    await heir.stop();
    expect(await isDone()).toBe(true);
    expect(seconds).toBeLessThan(60);
  }, 120_000);
});
