import { expect, test } from 'vitest';
import { stateAt } from '#lib/puzzle/puzzle-state.ts';
import { loadOpenAmendment } from '#lib/store/amendments.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { proposeAmendment } from '#lib/usecases/puzzles/propose-amendment.ts';
import { revealPuzzle } from '#lib/usecases/puzzles/reveal-puzzle.ts';
import { showPublicPuzzle } from '#lib/usecases/puzzles/show-public-puzzle.ts';
import { typedAmendment } from '../../support/amend.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { loggedOf } from '../../support/deeds.ts';
import { refused } from '../../support/positions.ts';

givenDatabase();

async function stateOf(puzzleId: number): Promise<string> {
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  if (puzzle === null) throw new Error('no such puzzle');
  return stateAt(puzzle, puzzle.now);
}

test('[T2] a closed puzzle is revealed, and it is logged', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { closes: -1 });
  expect((await revealPuzzle({ puzzleId, memberId: null })).ok).toBe(true);
  expect(await stateOf(puzzleId)).toBe('revealed');
  expect(await loggedOf(puzzleId)).toEqual([['puzzle-revealed', {}]]);
});

test.each([
  ['still open', {}, 'open'],
  ['not opened yet', { opens: 10 }, 'published'],
  ['not published', { isPublished: false }, 'draft'],
])('[T2] one that is %s keeps its solution', async (_what, times, state) => {
  const { puzzleId } = await buildPuzzle(await buildShow(), times);
  expect(refused(await revealPuzzle({ puzzleId, memberId: null }))).toMatchObject({
    code: 'wrong-state',
    state,
  });
  expect(await stateOf(puzzleId)).toBe(state);
});

test('[A6] a published puzzle is declared void, and a void one is neither revealed nor voided again', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow());
  expect((await revealPuzzle({ puzzleId, memberId: null, asVoid: true })).ok).toBe(true);
  expect(await stateOf(puzzleId)).toBe('void');
  expect(refused(await revealPuzzle({ puzzleId, memberId: null })).code).toBe('wrong-state');
  expect(refused(await revealPuzzle({ puzzleId, memberId: null, asVoid: true })).code).toBe('wrong-state');
  expect(await loggedOf(puzzleId)).toEqual([['puzzle-voided', {}]]);
});

test('[A6] a void puzzle carries a notice with the host’s words, gives no points, and says thank you', async () => {
  const { puzzleId, slug } = await buildPuzzle(await buildShow());
  expect(
    (await revealPuzzle({ puzzleId, memberId: null, asVoid: true, note: 'A pawn was lost in print.' })).ok,
  ).toBe(true);
  const shown = await showPublicPuzzle({ slug, locale: 'en' });
  expect(shown.ok && shown.value.puzzle).toMatchObject({
    state: 'void',
    corrections: [{ kind: 'void', note: 'A pawn was lost in print.', changed: [] }],
  });
});

test('[A6] a correction in the making ends with the puzzle', async () => {
  const show = await buildShow();
  const { puzzleId } = await buildPuzzle(show);
  const change = { fen: '6k1/5ppp/8/8/8/8/5PPP/1R4K1 w - - 0 1', published: ['Rb8#'] };
  const typed = await typedAmendment({ puzzleId, memberId: show.memberId }, change);
  expect((await proposeAmendment(typed)).ok).toBe(true);
  expect((await revealPuzzle({ puzzleId, memberId: null, asVoid: true })).ok).toBe(true);
  expect(await loadOpenAmendment(db(), puzzleId)).toBeNull();
});

test('a puzzle that is not there is refused', async () => {
  expect(refused(await revealPuzzle({ puzzleId: 987_654, memberId: null }))).toEqual({
    code: 'unknown-puzzle',
  });
});
