import { expect, test } from 'vitest';
import { importComments } from '#lib/usecases/answers/import-comments.ts';
import { listPuzzleImports } from '#lib/usecases/answers/list-imports.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('[P2] imports are listed newest first, a waiting one as waiting', async () => {
  const show = await buildShow();
  const { puzzleId } = await buildPuzzle(show);
  for (const sourceName of ['Video page', 'Forum']) {
    const { showId, memberId } = show;
    const bytes = new TextEncoder().encode('Ann\nRa8#');
    await importComments({
      puzzleId,
      showId,
      memberId,
      sourceName,
      bytes,
      format: 'pasted',
      fileName: null,
      columns: null,
      timeWord: 'before',
      exportedAt: null,
      zone: 'UTC',
    });
  }
  const listed = await listPuzzleImports(puzzleId);
  expect(listed.map((one) => [one.sourceName, one.state, one.added])).toEqual([
    ['Forum', 'waiting', 0],
    ['Video page', 'waiting', 0],
  ]);
});
