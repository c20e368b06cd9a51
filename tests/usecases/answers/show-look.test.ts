import { expect, test } from 'vitest';
import { showLook } from '#lib/usecases/answers/show-look.ts';
import { buildLook, buildRevealed } from '../../support/build-look.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('[A2] the words stand beside text, mark and explanation; every other outcome has its points', async () => {
  const { puzzleId, answerId } = await buildLook('It is pinned.');
  const question = await showLook({ puzzleId, answerId, locale: 'en' });
  expect(question?.look.words).toBe('It is pinned.');
  expect(question?.shown.answer.text).toBe('1.Qd6+');
  expect(question?.shown.explanation).toContain('Nxd6');
  expect(question?.choices.map(({ outcome, points }) => [outcome, points])).toEqual([
    ['solved', 5],
    ['slower', 2],
    ['unfinished', 0],
    ['slipped', 0],
    ['impossible', 0],
    ['unreadable', 0],
    ['chatter', 0],
  ]);
});

test('[A8] no look, or one of another puzzle, is no question', async () => {
  const { puzzleId, answerId } = await buildRevealed();
  expect(await showLook({ puzzleId, answerId, locale: 'en' })).toBeNull();
  const other = await buildLook();
  expect(await showLook({ puzzleId, answerId: other.answerId, locale: 'en' })).toBeNull();
});
