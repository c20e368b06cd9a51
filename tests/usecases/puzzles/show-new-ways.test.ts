import { expect, test } from 'vitest';
import { createTree } from '#lib/book/position-tree.ts';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { appendBookRows, budgetsKey } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { askRegrade } from '#lib/usecases/answers/decide-regrade.ts';
import { gradeAgain } from '#lib/usecases/answers/grade-again.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { extendBook } from '#lib/usecases/puzzles/extend-book.ts';
import { showNewWays } from '#lib/usecases/puzzles/show-new-ways.ts';
import { buildMarked, ruleForBoAndCy } from '../../support/build-regrade.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

// From this file's own hand: the long way is published, the rook on the seventh rank mates a move sooner.
const LADDER: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: '7k/1R6/8/8/8/8/8/R6K w - - 0 1',
  task: { kind: 'mate', moves: 3 },
  published: ['1.Rb6 Kg7 2.Ra7+ Kg8 3.Rb8#'],
};

/** Published when the book knew every first move but these. */
async function publishedWithout(unknown: readonly string[], published = LADDER.published) {
  const show = await buildShow();
  const { puzzleId, slug } = await buildPuzzle(show, { terms: { ...LADDER, published } });
  await db().puzzle.update({ where: { id: puzzleId }, data: { engineVersion: ENGINE_VERSION } });
  const { root, moves } = createTree(LADDER.fen);
  const known = moves(root).filter((move) => !unknown.includes(move));
  const place = { fen: LADDER.fen, position: root.bookPosition, movesLeft: 3 };
  const rows = await verifyHere({ terms: LADDER, lacking: known.map((move) => ({ ...place, move })) });
  await appendBookRows(db(), puzzleId, rows, budgetsKey(LADDER));
  await db().$executeRaw`
    update puzzle set verified_at = clock_timestamp(), published_at = clock_timestamp() where id = ${puzzleId}`;
  return { ...show, puzzleId, slug };
}

async function markAll(puzzleId: number): Promise<void> {
  while ((await markAnswers({ puzzleId })).lacking > 0) await extendBook({ puzzleId, verify: verifyHere });
}

async function waysOf(puzzleId: number) {
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  return puzzle === null ? [] : showNewWays(puzzle);
}

test('[A5] a shorter mate that the book did not know at publication: what, by how many, by whom', async () => {
  const { puzzleId, slug } = await publishedWithout(['b7c7']);
  await send(slug, '1.Rb6 Kg7 2.Ra7+', { name: 'Ada' });
  await markAll(puzzleId);
  expect(await waysOf(puzzleId), 'the published way alarms nobody').toEqual([]);
  for (const name of ['Bo', 'Cy', '', 'Di', 'Eve']) await send(slug, '1.Rc7 Kg8 2.Ra8 mate', { name });
  await markAll(puzzleId);
  expect(await waysOf(puzzleId)).toEqual([
    {
      moves: ['b7c7'],
      shorter: 2,
      isRuled: false,
      people: 5,
      names: ['Bo', 'Cy', 'Di'],
      isMarkedSince: false,
    },
  ]);
  expect(await db().mark.count({ where: { puzzleId, isCurrent: true, outcome: 'solved' } })).toBe(6);
});

test('[A5] another way as long as the published one; what the host knew before is no news', async () => {
  const { puzzleId, slug } = await publishedWithout(['b7d7'], ['1.Rc7 Kg8 2.Ra8#']);
  for (const text of ['1.Rd7 Kg8 2.Ra8#', '1.Rd7', '1.Re7 Kg8 2.Ra8#']) await send(slug, text);
  await markAll(puzzleId);
  const ways = await waysOf(puzzleId);
  expect(ways.map(({ moves, shorter, people }) => ({ moves, shorter, people }))).toEqual([
    { moves: ['b7d7'], shorter: null, people: 2 },
  ]);
});

test('[A5] once everybody was marked again on the host’s word, it says so', async () => {
  const { puzzleId, slug, memberId } = await publishedWithout(['a1a6']);
  await send(slug, '1.Ra6');
  await markAll(puzzleId);
  expect((await waysOf(puzzleId))[0]?.isMarkedSince).toBe(false);
  await askRegrade({ puzzleId, memberId, reason: 'another way' });
  await markAll(puzzleId);
  expect((await waysOf(puzzleId))[0]?.isMarkedSince).toBe(true);
});

test('[V8] a move that was unclear and is ruled to hold is told as the host’s own word', async () => {
  const { puzzleId, memberId } = await buildMarked({ isRevealed: false });
  expect(await waysOf(puzzleId), 'unclear is not yet a way').toEqual([]);
  await ruleForBoAndCy(puzzleId, memberId);
  await gradeAgain(db(), { id: puzzleId }, { answers: 'all', reason: 'said so', memberId });
  await markAnswers({ puzzleId });
  expect(await waysOf(puzzleId)).toMatchObject([{ moves: ['g1f1'], isRuled: true, people: 2 }]);
});

test('before publication there is nobody to find anything', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
  expect(await waysOf(puzzleId)).toEqual([]);
});
