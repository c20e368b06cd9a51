import { expect, test } from 'vitest';
import { createTree } from '#lib/book/position-tree.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { appendBookRows, budgetsKey } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { appendFormerTerms } from '#lib/store/former-terms.ts';
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

test('[A6] an amended puzzle has a book for each revision, kept apart; one that never was has none', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow());
  const other = { ...MATE_IN_ONE, fen: '6k1/5ppp/8/8/8/8/5PPP/1R4K1 w - - 0 1', proofNodes: 5 };
  const former = { revision: 1, terms: other, engineVersion: 'an older one' };
  await appendFormerTerms(db(), puzzleId, former);
  await db().puzzle.update({ where: { id: puzzleId }, data: { revision: 2 } });
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  if (puzzle === null) throw new Error('gone');
  const now = await loadBook(db(), puzzle);
  const then = await loadBook(db(), puzzle, 1);
  expect(now).toMatchObject({ revision: 2, terms: { fen: MATE_IN_ONE.fen }, engineVersion: ENGINE_VERSION });
  expect(then).toMatchObject({
    revision: 1,
    terms: other,
    engineVersion: 'an older one',
    bookVersion: 'mate 5',
  });
  expect(now?.former.get(1)?.book).toBe(then);
  expect(then?.former.size).toBe(0);
  expect(await loadBook(db(), puzzle), 'kept').toBe(now);
  expect(await loadBook(db(), puzzle, 3)).toBeNull();
});
