import { expect, test } from 'vitest';
import { listAnswers } from '#lib/usecases/answers/list-answers.ts';
import { withdrawAnswer } from '#lib/usecases/answers/withdraw-answer.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('[A1] pages join without gap or overlap, newest first, the unmarked among them', async () => {
  const { slug, puzzleId } = await buildPuzzle(await buildShow());
  for (let number = 0; number < 105; number += 1) await send(slug, `Ra8 ${number}`);
  const first = await listAnswers({ puzzleId, below: null, outcome: null });
  const second = await listAnswers({ puzzleId, below: first.next, outcome: null });
  expect([first.lines.length, second.lines.length, second.next]).toEqual([100, 5, null]);
  const ids = [...first.lines, ...second.lines].map((line) => line.id);
  expect([...new Set(ids)].sort((a, b) => b - a)).toEqual(ids);
  expect(first.lines[0]).toMatchObject({ outcome: null, points: null, isOverruled: false });
});

test('[A1] an outcome that is none asks for all; withdrawn answers are not listed', async () => {
  const { slug, puzzleId } = await buildPuzzle(await buildShow());
  const { token } = await send(slug, 'Ra8');
  expect((await listAnswers({ puzzleId, below: null, outcome: "x' or 1=1" })).lines).toHaveLength(1);
  expect((await listAnswers({ puzzleId, below: null, outcome: 'solved' })).lines).toHaveLength(0);
  await withdrawAnswer({ token });
  expect((await listAnswers({ puzzleId, below: null, outcome: null })).lines).toHaveLength(0);
});
