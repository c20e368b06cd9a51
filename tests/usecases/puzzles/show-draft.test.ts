import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { showDraft } from '#lib/usecases/puzzles/show-draft.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function draftOf(isPublished: boolean) {
  const terms = { ...MATE_IN_ONE, anyDefence: true, published: ['Ra8#', 'Ra8 mate'] };
  const { puzzleId } = await buildPuzzle(await buildShow(), { terms, isPublished });
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  return puzzle === null ? null : showDraft(puzzle);
}

test('[V9] a draft fills the form it came from: lines one under another, ticked boxes only', async () => {
  const draft = await draftOf(false);
  expect(draft?.texts).toMatchObject({
    position: MATE_IN_ONE.fen,
    published: 'Ra8#\nRa8 mate',
    task: 'mate',
    moves: '1',
    anyDefence: 'on',
    episodeTitle: 'One',
  });
  expect(Object.keys(draft?.texts ?? {})).not.toContain('isStrict');
});

test('[A6] a published puzzle is no draft: its terms are amended, not changed', async () => {
  expect(await draftOf(true)).toBeNull();
});
