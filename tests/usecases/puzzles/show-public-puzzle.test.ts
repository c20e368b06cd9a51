import { beforeAll, expect, test } from 'vitest';
import { showPublicPuzzle } from '#lib/usecases/puzzles/show-public-puzzle.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { HEALEY } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();
const slugs = { open: '', draft: '', ahead: '', closed: '' };

beforeAll(async () => {
  const show = await buildShow();
  slugs.open = (await buildPuzzle(show, { terms: HEALEY })).slug;
  slugs.draft = (await buildPuzzle(show, { isPublished: false })).slug;
  slugs.ahead = (await buildPuzzle(show, { opens: 10, closes: 20 })).slug;
  slugs.closed = (await buildPuzzle(show, { opens: -20, closes: -10 })).slug;
});

test('[O1] an open puzzle shows task and how far, in the asked language', async () => {
  const { puzzle } = accepted(await showPublicPuzzle({ slug: slugs.open, locale: 'en' }));
  expect(puzzle.state).toBe('open');
  expect(puzzle.howFar).toBe('To the mate; the last move may be left out.');
  const german = accepted(await showPublicPuzzle({ slug: slugs.open, locale: 'de' }));
  expect(german.puzzle.howFar).not.toBe(puzzle.howFar);
});

test('[T2] nothing of the published line is in the public view', async () => {
  const shown = accepted(await showPublicPuzzle({ slug: slugs.open, locale: 'en' }));
  expect(JSON.stringify(shown)).not.toMatch(/Rh1|Qb1|d1h1/);
});

test('[T2] drafts, puzzles not yet open and nonsense are refused alike', async () => {
  for (const slug of [slugs.draft, slugs.ahead, 'nonsense']) {
    expect(refused(await showPublicPuzzle({ slug, locale: 'en' }))).toEqual({ code: 'unknown-puzzle' });
  }
});

test('[P2] after the close it is closed by the times alone', async () => {
  expect(accepted(await showPublicPuzzle({ slug: slugs.closed, locale: 'en' })).puzzle.state).toBe('closed');
});
