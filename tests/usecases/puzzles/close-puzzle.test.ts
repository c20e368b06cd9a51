import { expect, test } from 'vitest';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { db } from '#lib/store/client.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { closeByTime, closePuzzle, moveClose } from '#lib/usecases/puzzles/close-puzzle.ts';
import { submission } from '../../support/build-answer.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('closed by hand, the next answer is late', async () => {
  const { puzzleId, slug } = await buildPuzzle(await buildShow());
  expect((await closePuzzle({ puzzleId, memberId: null })).ok).toBe(true);
  const sent = await submitAnswer(submission(slug, 'Ra8'));
  expect(sent.ok && sent.value.isLate).toBe(true);
  const again = await closePuzzle({ puzzleId, memberId: null });
  expect(again.ok ? null : again.reason.code).toBe('wrong-state');
});

test('closed by time, it is carried out once, however often the job runs', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { closes: -1 });
  expect(await closeByTime(puzzleId)).toBe(true);
  expect(await closeByTime(puzzleId)).toBe(false);
  expect(await db().log.count({ where: { puzzleId, kind: 'puzzle-closed' } })).toBe(1);
  expect(await closeByTime((await buildPuzzle(await buildShow())).puzzleId), 'before its time').toBe(false);
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
