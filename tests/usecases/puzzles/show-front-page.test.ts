import { expect, test } from 'vitest';
import { showFrontPage } from '#lib/usecases/puzzles/show-front-page.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('before there is a show the first page is empty and has no name', async () => {
  expect(await showFrontPage({ locale: 'en' })).toMatchObject({ showName: null, open: [], past: [] });
});

test('[T2] open puzzles and past ones are told apart; drafts and those to come are not there', async () => {
  const show = await buildShow();
  const open = await buildPuzzle(show);
  const older = await buildPuzzle(show, { opens: -90, closes: -80 });
  const newer = await buildPuzzle(show, { opens: -50, closes: -40 });
  await buildPuzzle(show, { isPublished: false });
  await buildPuzzle(show, { opens: 5, closes: 50 });
  const page = await showFrontPage({ locale: 'en' });
  expect(page.showName).toBe('The Test Board');
  expect(page.open.map((puzzle) => puzzle.slug)).toEqual([open.slug]);
  expect(page.past.map((puzzle) => puzzle.slug)).toEqual([newer.slug, older.slug]);
});
