import { describe, expect, test } from 'vitest';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { stateAt } from '#lib/puzzle/puzzle-state.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { closeByTime, closePuzzle, moveClose } from '#lib/usecases/puzzles/close-puzzle.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { fillBook, markEverything, revealNow, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { jobsOf, loggedOf } from '../../support/deeds.ts';
import { refused } from '../../support/positions.ts';

givenDatabase();

async function build(times: { opens?: number; closes?: number; isPublished?: boolean } = {}) {
  const show = await buildShow();
  return { ...show, ...(await buildPuzzle(show, times)) };
}

async function stateOf(puzzleId: number): Promise<string> {
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  if (puzzle === null) throw new Error('no such puzzle');
  return stateAt(puzzle, puzzle.now);
}

describe('closing by hand', () => {
  test('[P2] closes at this moment, rings for the unmarked answers and is logged', async () => {
    const { puzzleId, slug, memberId } = await build();
    expect((await send(slug, 'Ra8')).isLate).toBe(false);
    expect((await closePuzzle({ puzzleId, memberId })).ok).toBe(true);
    expect(await stateOf(puzzleId)).toBe('closed');
    expect((await send(slug, 'Ra8')).isLate).toBe(true);
    expect([...(await jobsOf(puzzleId)).keys()]).toContain('mark-answers');
    expect(await loggedOf(puzzleId)).toContainEqual(['puzzle-closed', { by: 'hand' }]);
  });

  test('[F7] who is told "in time" while the close is being written stays in time, and nobody else is told so', async () => {
    const { puzzleId, slug, memberId } = await build();
    // The close takes its time between its moment and its commit.
    await db().$executeRaw`
      create function dawdle() returns trigger language plpgsql as
      $$ begin perform pg_sleep(0.6); return new; end $$`;
    await db().$executeRaw`
      create trigger dawdle after update of closes_at on puzzle for each row execute function dawdle()`;
    const closing = closePuzzle({ puzzleId, memberId });
    await new Promise((next) => setTimeout(next, 200));
    const sent = await send(slug, 'Ra8');
    expect((await closing).ok).toBe(true);
    await db().$executeRaw`drop trigger dawdle on puzzle`;
    await markAnswers({ puzzleId });
    const { standing } = await db().answer.findUniqueOrThrow({ where: { id: sent.answerId } });
    expect([sent.isLate, standing === 'late']).toEqual([true, true]);
  });

  test.each([
    ['a draft', { isPublished: false }, 'draft'],
    ['before its opening', { opens: 10, closes: 60 }, 'published'],
    ['a closed one', { closes: -1 }, 'closed'],
  ])('%s is refused, and nothing is logged', async (_what, times, state) => {
    const { puzzleId } = await build(times);
    expect(refused(await closePuzzle({ puzzleId, memberId: null }))).toMatchObject({
      code: 'wrong-state',
      state,
      expected: ['open'],
    });
    expect(await loggedOf(puzzleId)).toEqual([]);
  });

  test('a puzzle that is not there is refused', async () => {
    expect(refused(await closePuzzle({ puzzleId: 987_654, memberId: null }))).toEqual({
      code: 'unknown-puzzle',
    });
  });
});

describe('closing by time', () => {
  test('is carried out once: asked again, nothing is logged twice', async () => {
    const { puzzleId } = await build({ closes: -1 });
    expect(await closeByTime(puzzleId)).toBe(true);
    expect(await closeByTime(puzzleId)).toBe(false);
    expect(await loggedOf(puzzleId)).toEqual([['puzzle-closed', { by: 'time' }]]);
  });

  test('two workers at the same moment carry it out once', async () => {
    const { puzzleId } = await build({ closes: -1 });
    const done = await Promise.all([closeByTime(puzzleId), closeByTime(puzzleId)]);
    expect(done.filter(Boolean)).toHaveLength(1);
  });

  test.each([
    ['ahead of the close', {}],
    ['of a draft', { closes: -1, isPublished: false }],
  ])('%s there is nothing to carry out', async (_what, times) => {
    const { puzzleId } = await build(times);
    expect(await closeByTime(puzzleId)).toBe(false);
    expect(await loggedOf(puzzleId)).toEqual([]);
  });
});

describe('moving the close', () => {
  test('[P2] later: what was late is in time, decided anew, and the close is carried out anew', async () => {
    const { puzzleId, slug, memberId } = await build({ closes: -1 });
    await fillBook(puzzleId, MATE_IN_ONE);
    await closeByTime(puzzleId);
    const { answerId } = await send(slug, 'Ra8#');
    await markEverything(puzzleId, MATE_IN_ONE);
    const standing = async () => (await db().answer.findUniqueOrThrow({ where: { id: answerId } })).standing;
    expect(await standing()).toBe('late');
    const closesAt = new Date(Date.now() + 3_600_000);
    expect((await moveClose({ puzzleId, memberId, closesAt })).ok).toBe(true);
    expect(await stateOf(puzzleId)).toBe('open');
    expect((await jobsOf(puzzleId)).get('close-puzzle')).toEqual(closesAt);
    await markEverything(puzzleId, MATE_IN_ONE);
    expect(await standing()).toBe('counted');
    expect((await loggedOf(puzzleId)).filter(([kind]) => kind === 'close-moved')).toHaveLength(1);
  });

  test('to the opening or before it is refused', async () => {
    const { puzzleId } = await build();
    const opensAt = (await loadPuzzle(db(), { id: puzzleId }))?.opensAt ?? new Date();
    expect(refused(await moveClose({ puzzleId, memberId: null, closesAt: opensAt })).code).toBe(
      'close-not-after-opening',
    );
  });

  test('after the reveal is refused: the solution is out', async () => {
    const { puzzleId } = await build();
    await revealNow(puzzleId);
    const closesAt = new Date(Date.now() + 3_600_000);
    expect(refused(await moveClose({ puzzleId, memberId: null, closesAt }))).toMatchObject({
      code: 'wrong-state',
      state: 'revealed',
    });
    expect(await stateOf(puzzleId)).toBe('revealed');
  });
});

test('[P2] the half-open interval: planted a microsecond before, at and after the close', async () => {
  const show = await buildShow();
  const { puzzleId } = await buildPuzzle(show, { closes: -10 });
  await db().puzzle.update({ where: { id: puzzleId }, data: { engineVersion: ENGINE_VERSION } });
  const ids: number[] = [];
  for (const offset of [-1, 0, 1]) {
    const solver = await db().solver.create({ data: { showId: show.showId } });
    const rows = await db().$queryRaw<{ id: number }[]>`
      insert into answer (puzzle_id, solver_id, text, channel, client_key, received_at)
      select ${puzzleId}, ${solver.id}, 'first!', 'page', ${`planted${offset}`}, closes_at + make_interval(secs => ${offset}::float8 / 1000000)
      from puzzle where id = ${puzzleId} returning id`;
    ids.push(rows[0]?.id ?? 0);
  }
  await markAnswers({ puzzleId });
  const standing = async () =>
    (await db().answer.findMany({ where: { id: { in: ids } }, orderBy: { id: 'asc' } })).map(
      (one) => one.standing,
    );
  expect(await standing()).toEqual(['no-answer', 'late', 'late']);

  const { closesAt } = await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } });
  await moveClose({ puzzleId, memberId: null, closesAt: new Date((closesAt?.getTime() ?? 0) + 60_000) });
  await markAnswers({ puzzleId });
  expect(await standing(), 'a moved close decides all of them anew').toEqual([
    'no-answer',
    'no-answer',
    'no-answer',
  ]);
  expect(await db().log.count({ where: { puzzleId, kind: 'close-moved' } })).toBe(1);
});
