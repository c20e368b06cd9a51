import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { gradeAgain } from '#lib/usecases/answers/grade-again.ts';
import { submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { submission } from '../../support/build-answer.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function threeDone() {
  const { puzzleId, slug } = await buildPuzzle(await buildShow());
  const ids: number[] = [];
  for (const text of ['1.Ra8#', 'Ra8', 'hello']) {
    const sent = await submitAnswer(submission(slug, text));
    if (!sent.ok) throw new Error(JSON.stringify(sent.reason));
    ids.push(sent.value.answerId);
  }
  await db().answer.updateMany({ where: { puzzleId }, data: { work: 'done' } });
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  if (puzzle === null) throw new Error('no puzzle');
  return { puzzle, ids };
}

async function waiting(puzzleId: number): Promise<number[]> {
  const rows = await db().answer.findMany({ where: { puzzleId, work: 'to-mark' }, orderBy: { id: 'asc' } });
  return rows.map((row) => row.id);
}

test('[V8] before the reveal the named answers go back on the work list, and no others', async () => {
  const { puzzle, ids } = await threeDone();
  const count = await gradeAgain(db(), puzzle, {
    answers: ids.slice(1, 2),
    reason: 'said so',
    memberId: null,
  });
  expect(count).toBe(1);
  expect(await waiting(puzzle.id)).toEqual([ids[1]]);
});

test('[V8] or all of the puzzle, but never one that was withdrawn', async () => {
  const { puzzle, ids } = await threeDone();
  const withdrawn = { withdrawnAt: new Date(), text: '', name: null, standing: 'withdrawn' };
  await db().answer.update({ where: { id: ids[2] ?? 0 }, data: withdrawn });
  const count = await gradeAgain(db(), puzzle, { answers: 'all', reason: 'said so', memberId: null });
  expect(count).toBe(2);
  expect(await waiting(puzzle.id)).toEqual(ids.slice(0, 2));
});
