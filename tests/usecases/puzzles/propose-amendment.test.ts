import { describe, expect, test } from 'vitest';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { loadOpenAmendment } from '#lib/store/amendments.ts';
import { db } from '#lib/store/client.ts';
import { loadProgress } from '#lib/store/progress.ts';
import { cancelAmendment, proposeAmendment } from '#lib/usecases/puzzles/propose-amendment.ts';
import { showPublicPuzzle } from '#lib/usecases/puzzles/show-public-puzzle.ts';
import { typedAmendment } from '../../support/amend.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { jobsOf, loggedOf } from '../../support/deeds.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();

async function build(times: Parameters<typeof buildPuzzle>[1] = {}) {
  const show = await buildShow();
  return { ...show, ...(await buildPuzzle(show, times)) };
}

const OTHER = { fen: '6k1/5ppp/8/8/8/8/5PPP/1R4K1 w - - 0 1', published: ['Rb8#'] };

test('[A6, T2] new terms are kept aside and verification is asked for: the public sees nothing of it', async () => {
  const puzzle = await build();
  const before = accepted(await showPublicPuzzle({ slug: puzzle.slug, locale: 'en' })).puzzle;
  const id = accepted(await proposeAmendment(await typedAmendment(puzzle, OTHER, { title: 'Corrected' })));
  expect(accepted(await showPublicPuzzle({ slug: puzzle.slug, locale: 'en' })).puzzle).toEqual(before);
  expect(await loadOpenAmendment(db(), puzzle.puzzleId)).toMatchObject({
    id,
    terms: { ...MATE_IN_ONE, ...OTHER },
    title: 'Corrected',
    howFar: null,
    note: 'A misprint, sorry.',
    state: 'waiting',
    claim: null,
  });
  expect([...(await jobsOf(puzzle.puzzleId)).keys()]).toContain('verify-amendment');
  expect((await loadProgress(db(), puzzle.puzzleId))?.state).toBe('waiting');
  expect(await loggedOf(puzzle.puzzleId)).toEqual([['amendment-asked', { amendment: id }]]);
});

test('[P1] scheme and budgets stay those of the puzzle, whatever is sent', async () => {
  const puzzle = await build();
  const change: Partial<PuzzleTerms> = { ...OTHER, scheme: 'key-move', proofNodes: 1, budgetNodes: 1 };
  accepted(await proposeAmendment(await typedAmendment(puzzle, change)));
  const { scheme, proofNodes, budgetNodes } = MATE_IN_ONE;
  expect((await loadOpenAmendment(db(), puzzle.puzzleId))?.terms).toMatchObject({
    scheme,
    proofNodes,
    budgetNodes,
  });
});

describe('[A6] what is refused, and nothing is kept', () => {
  const rows: [string, Partial<PuzzleTerms>, Parameters<typeof typedAmendment>[2], object][] = [
    ['no word to the viewers', OTHER, { note: ' ' }, { code: 'note-empty' }],
    ['a word without end', OTHER, { note: 'x'.repeat(501) }, { code: 'note-too-long' }],
    ['no title', OTHER, { title: ' ' }, { code: 'title-empty' }],
    ['a title without end', OTHER, { title: 'x'.repeat(121) }, { code: 'title-too-long', most: 120 }],
    ['nothing that differs', {}, {}, { code: 'nothing-changed' }],
    ['nothing but another title', {}, { title: 'Better' }, { code: 'nothing-changed' }],
    ['no position', { fen: 'nonsense' }, {}, { code: 'fen' }],
    ['a game that is over', { fen: '7k/5KQ1/8/8/8/8/8/8 b - - 0 1' }, {}, { code: 'game-over' }],
    ['a mate in 31', { task: { kind: 'mate', moves: 31 } }, {}, { code: 'mate-moves' }],
    ['a draw without an end', { task: { kind: 'draw' }, published: [] }, {}, { code: 'draw-needs-end' }],
    ['bounds that cross', { winBound: 100 }, {}, { code: 'bounds', least: -10_000, most: 10_000 }],
    ['half a hundredth', { winBound: 300.5 }, {}, { code: 'bounds' }],
  ];
  test.each(rows)('%s', async (_what, change, more, reason) => {
    const puzzle = await build();
    expect(refused(await proposeAmendment(await typedAmendment(puzzle, change, more)))).toMatchObject(reason);
    expect(await loadOpenAmendment(db(), puzzle.puzzleId)).toBeNull();
  });

  test('a draft, which is simply changed, and a void puzzle', async () => {
    const draft = await build({ isPublished: false });
    const gone = await build();
    await db().$executeRaw`update puzzle set voided_at = clock_timestamp() where id = ${gone.puzzleId}`;
    for (const [puzzle, state] of [
      [draft, 'draft'],
      [gone, 'void'],
    ] as const) {
      const reason = refused(await proposeAmendment(await typedAmendment(puzzle, OTHER)));
      expect(reason).toMatchObject({ code: 'wrong-state', state });
    }
  });

  test('a second one while one is in the making, also of two at once', async () => {
    const puzzle = await build();
    const typed = await typedAmendment(puzzle, OTHER);
    const both = await Promise.all([proposeAmendment(typed), proposeAmendment(typed)]);
    expect(both.filter((one) => one.ok)).toHaveLength(1);
    expect(refused(await proposeAmendment(typed))).toEqual({ code: 'amendment-open' });
  });
});

test('[A6] a cancelled amendment leaves the puzzle as it is and makes room for the next', async () => {
  const puzzle = await build();
  const { puzzleId, memberId } = puzzle;
  const id = accepted(await proposeAmendment(await typedAmendment(puzzle, OTHER)));
  accepted(await cancelAmendment({ puzzleId, memberId }));
  expect(refused(await cancelAmendment({ puzzleId, memberId }))).toEqual({ code: 'no-amendment' });
  expect(await loadOpenAmendment(db(), puzzleId)).toBeNull();
  expect((await loggedOf(puzzleId)).at(-1)).toEqual(['amendment-cancelled', { amendment: id }]);
  expect(accepted(await proposeAmendment(await typedAmendment(puzzle, OTHER)))).toBeGreaterThan(id);
});
