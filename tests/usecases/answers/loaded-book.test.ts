import { expect, test } from 'vitest';
import { createTree } from '#lib/book/position-tree.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { appendBookRows, budgetsKey } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { saveVerdictRuling } from '#lib/store/rulings.ts';
import { loadBook } from '#lib/usecases/answers/loaded-book.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

test('rows that are new join the book that is kept; a ruling makes it anew; an unverified puzzle has none', async () => {
  const { memberId, ...place } = await buildShow();
  const { puzzleId } = await buildPuzzle(place);
  const load = async () => {
    const puzzle = await loadPuzzle(db(), { id: puzzleId });
    if (puzzle === null) throw new Error('gone');
    return loadBook(db(), puzzle);
  };
  await db().puzzle.update({ where: { id: puzzleId }, data: { engineVersion: ENGINE_VERSION } });
  const empty = await load();
  expect(empty?.book.rows()).toEqual([]);
  empty?.results.set('kept', { kind: 'lacking', lacking: [] });

  const { root } = createTree(MATE_IN_ONE.fen);
  const key = { position: root.bookPosition, movesLeft: 1, move: 'a1a8' };
  const rows = await verifyHere({ terms: MATE_IN_ONE, lacking: [{ ...key, fen: MATE_IN_ONE.fen }] });
  await appendBookRows(db(), puzzleId, rows, budgetsKey(MATE_IN_ONE));
  const grown = await load();
  expect(grown).toBe(empty);
  expect(grown?.book.find(key)?.verdict).toBe('holds');
  expect(grown?.results.size, 'what was worked out before is forgotten').toBe(0);

  await saveVerdictRuling(db(), puzzleId, { ...key, verdict: 'slips', reason: 'no', memberId });
  const ruled = await load();
  expect(ruled).not.toBe(grown);
  expect(ruled?.book.ruling(key)?.verdict).toBe('slips');

  await db().puzzle.update({ where: { id: puzzleId }, data: { engineVersion: null } });
  expect(await load()).toBeNull();
});
