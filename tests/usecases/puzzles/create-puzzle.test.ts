import { expect, test } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { db } from '#lib/store/client.ts';
import { checkTerms, createPuzzle } from '#lib/usecases/puzzles/create-puzzle.ts';
import { BACK_RANK, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

test('a draft is saved with its lines, its verification asked for, the deed logged', async () => {
  const { showId, episodeId, memberId } = await buildShow();
  const draft = {
    showId,
    episodeId,
    title: ' Back rank ',
    terms: MATE_IN_ONE,
    opensAt: null,
    closesAt: null,
  };
  const made = await createPuzzle({ ...draft, zone: 'Europe/Vienna', memberId });
  if (!made.ok) throw new Error(made.reason.code);
  const { puzzleId, slug } = made.value;
  const row = await db().puzzle.findUniqueOrThrow({
    where: { id: puzzleId },
    include: { publishedLines: true, progress: true },
  });
  expect([row.title, row.slug, row.progress?.state]).toEqual(['Back rank', slug, 'waiting']);
  expect(row.publishedLines.map((line) => line.text)).toEqual(['Ra8#']);
  const jobs = await db().$queryRaw<{ key: string }[]>`select key from graphile_worker.jobs`;
  expect(jobs.map((job) => job.key)).toContain(`verify-puzzle:${puzzleId}`);
  expect(await db().log.count({ where: { puzzleId, kind: 'puzzle-created', memberId } })).toBe(1);
});

const terms = (more: Partial<PuzzleTerms>): PuzzleTerms => ({ ...MATE_IN_ONE, ...more });
test.each([
  ['a text that is no FEN', terms({ fen: 'nonsense' }), 'fen'],
  ['a position that is over', terms({ fen: '7k/6Q1/6K1/8/8/8/8/8 b - - 0 1' }), 'game-over'],
  ['a mate in 0', terms({ task: { kind: 'mate', moves: 0 } }), 'mate-moves'],
  [
    'a draw without an end',
    { ...DEFAULT_TERMS, fen: BACK_RANK, task: { kind: 'draw' } } as const,
    'draw-needs-end',
  ],
])('%s is refused', (_, given, code) => {
  const checked = checkTerms(given);
  expect(checked.ok ? null : checked.reason.code).toBe(code);
});
