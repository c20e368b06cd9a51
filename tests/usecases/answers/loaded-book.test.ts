import { expect, test } from 'vitest';
import type { BookRow } from '#lib/book/book-row.ts';
import { appendBookRows, budgetsKey } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { saveReadingRuling, saveVerdictRuling } from '#lib/store/rulings.ts';
import { type LoadedBook, loadBook } from '#lib/usecases/answers/loaded-book.ts';
import { BACK_RANK, buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { toRow } from '../../support/ruled-book.ts';

givenDatabase();

const POSITION = BACK_RANK.split(' ').slice(0, 4).join(' ');

function row(move: string): BookRow {
  const ruled = toRow({ position: POSITION, movesLeft: 1, move }, { verdict: 'slips' });
  return { ...ruled, evidence: { kind: 'budget' }, engineVersion: 'test' };
}

const append = (puzzleId: number, moves: readonly string[]) =>
  appendBookRows(db(), puzzleId, moves.map(row), budgetsKey(MATE_IN_ONE));

async function load(puzzleId: number): Promise<LoadedBook> {
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  const loaded = puzzle === null ? null : await loadBook(db(), puzzle);
  if (loaded === null) throw new Error('There is no book.');
  return loaded;
}

const verdictOf = ({ book }: LoadedBook, move: string) =>
  book.find({ position: POSITION, movesLeft: 1, move })?.verdict ?? null;

async function build() {
  const show = await buildShow();
  const { puzzleId } = await buildPuzzle(show);
  await append(puzzleId, ['g1f1']);
  return { ...show, puzzleId };
}

test('is kept between batches; new rows join it, and results that rested on the old rows are dropped', async () => {
  const { puzzleId } = await build();
  const first = await load(puzzleId);
  first.results.set('Ra8', { kind: 'lacking', lacking: [] });
  const same = await load(puzzleId);
  expect(same).toBe(first);
  expect(same.results.size).toBe(1);
  await append(puzzleId, ['a1a2']);
  const grown = await load(puzzleId);
  expect([verdictOf(grown, 'g1f1'), verdictOf(grown, 'a1a2')]).toEqual(['slips', 'slips']);
  expect(grown.results.size).toBe(0);
});

test('[V8] a ruling makes a new book at once: of a verdict and of a reading', async () => {
  const { puzzleId, memberId } = await build();
  const first = await load(puzzleId);
  const key = { position: POSITION, movesLeft: 1, move: 'a1b1' };
  await saveVerdictRuling(db(), puzzleId, { ...key, verdict: 'holds', reason: 'seen', memberId });
  const ruled = await load(puzzleId);
  expect(ruled).not.toBe(first);
  expect([ruled.book.ruling(key)?.verdict, first.book.ruling(key)]).toEqual(['holds', null]);
  await saveReadingRuling(db(), puzzleId, { textHash: 'abc', meant: ['a1a8'], reason: 'asked', memberId });
  expect((await load(puzzleId)).meantByRuling).toEqual(new Map([['abc', ['a1a8']]]));
});

test('changed terms and another engine version make a new book, without the rows of the former', async () => {
  const { puzzleId } = await build();
  const first = await load(puzzleId);
  await db().puzzle.update({ where: { id: puzzleId }, data: { mateWritten: true } });
  const changed = await load(puzzleId);
  expect(changed).not.toBe(first);
  expect(changed.terms.mateWritten).toBe(true);
  await db().puzzle.update({ where: { id: puzzleId }, data: { engineVersion: 'test-2' } });
  expect(verdictOf(await load(puzzleId), 'g1f1')).toBeNull();
});

test('books of many puzzles do not mix, also where more are used than are kept', async () => {
  const places = [];
  for (let count = 0; count < 22; count += 1) places.push(await build());
  for (const { puzzleId } of places) await load(puzzleId);
  const [first] = places;
  await append(first?.puzzleId ?? 0, ['a1a3']);
  const verdicts = [];
  for (const { puzzleId } of places) verdicts.push(verdictOf(await load(puzzleId), 'a1a3'));
  expect(verdicts).toEqual(['slips', ...new Array(21).fill(null)]);
});

test('a puzzle that was never verified has no book', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  expect(puzzle === null ? 'gone' : await loadBook(db(), puzzle)).toBeNull();
});
