import { describe, expect, test } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { db } from '#lib/store/client.ts';
import { loadPublishedLines, loadPuzzle } from '#lib/store/puzzles.ts';
import {
  checkTerms,
  createPuzzle,
  type PuzzleDraft,
  saveDraft,
} from '#lib/usecases/puzzles/create-puzzle.ts';
import { BACK_RANK, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { jobsOf, loggedOf } from '../../support/deeds.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();

async function draft(more: Partial<PuzzleDraft> = {}): Promise<PuzzleDraft> {
  const { showId, episodeId, memberId } = await buildShow();
  const times = { opensAt: null, closesAt: null, zone: 'UTC' };
  return { showId, episodeId, memberId, title: ' The open file ', terms: MATE_IN_ONE, ...times, ...more };
}

describe('a draft', () => {
  test('is saved with its lines, waits for its verification and is logged', async () => {
    const { puzzleId, slug } = accepted(await createPuzzle(await draft()));
    const stored = await loadPuzzle(db(), { slug });
    expect(stored).toMatchObject({ id: puzzleId, title: 'The open file', claim: null, publishedAt: null });
    expect(await loadPublishedLines(db(), puzzleId)).toEqual(['Ra8#']);
    expect([...(await jobsOf(puzzleId)).keys()]).toEqual(['verify-puzzle']);
    expect((await loggedOf(puzzleId)).map(([kind]) => kind)).toEqual(['puzzle-created']);
  });

  test('[T2] has an address that tells neither number nor title, another each time', async () => {
    const one = await draft();
    const slugs = await Promise.all([1, 2, 3].map(async () => accepted(await createPuzzle(one)).slug));
    expect(new Set(slugs).size).toBe(3);
    for (const slug of slugs) expect(slug).toMatch(/^[a-z0-9]{10}$/);
  });

  test('is gone as a whole where its verification cannot be asked for', async () => {
    const one = await draft();
    const failing = saveDraft(one, () => Promise.reject(new Error('the queue is away')));
    await expect(failing).rejects.toThrow('the queue is away');
    expect(await db().puzzle.count({ where: { showId: one.showId } })).toBe(0);
  });

  test.each([
    ['no title', { title: ' \n' }, 'title-empty'],
    [
      'a close at its opening',
      { opensAt: new Date('2026-11-20T18:00Z'), closesAt: new Date('2026-11-20T18:00Z') },
      'close-not-after-opening',
    ],
    ['no position', { terms: { ...MATE_IN_ONE, fen: 'nonsense' } }, 'fen'],
  ])('with %s is refused, and nothing is stored', async (_what, more, code) => {
    const one = await draft(more);
    expect(refused(await createPuzzle(one)).code).toBe(code);
    expect(await db().puzzle.count({ where: { showId: one.showId } })).toBe(0);
  });
});

describe('terms that need no engine to be wrong', () => {
  const mate = (moves: number): PuzzleTerms => ({ ...MATE_IN_ONE, task: { kind: 'mate', moves } });
  const win = (fen: string): PuzzleTerms => ({ ...DEFAULT_TERMS, fen, task: { kind: 'win' } });
  const draw: PuzzleTerms = { ...DEFAULT_TERMS, fen: BACK_RANK, task: { kind: 'draw' } };
  test.each([
    ['mate in 0', mate(0), { code: 'mate-moves' }],
    ['mate in 31', mate(31), { code: 'mate-moves' }],
    ['mated already', win('R5k1/5ppp/8/8/8/8/8/6K1 b - - 0 1'), { code: 'game-over', end: 'checkmate' }],
    ['stalemate', win('7k/5Q2/6K1/8/8/8/8/8 b - - 0 1'), { code: 'game-over', end: 'stalemate' }],
    ['two bare kings', win('7k/8/6K1/8/8/8/8/8 w - - 0 1'), { code: 'game-over', end: 'insufficient' }],
    ['a king too few', win('7k/8/8/8/8/8/8/7R w - - 0 1'), { code: 'fen' }],
    ['[O1] a draw without line or length', draw, { code: 'draw-needs-end' }],
  ])('%s', (_what, terms, reason) => {
    expect(refused(checkTerms(terms))).toMatchObject(reason);
  });

  test.each([
    ['mate in 30', mate(30)],
    ['[O1] a draw with a length', { ...draw, solverMoves: 3 }],
    ['[O1] a draw with a line', { ...draw, published: ['Kf1'] }],
  ])('%s is taken', (_what, terms) => {
    expect(checkTerms(terms).ok).toBe(true);
  });

  test('give back the position in full and no empty lines', () => {
    const terms = accepted(
      checkTerms({ ...MATE_IN_ONE, fen: `  ${BACK_RANK}  `, published: ['', 'Ra8#', '  '] }),
    );
    expect([terms.fen, terms.published]).toEqual([BACK_RANK, ['Ra8#']]);
  });
});
