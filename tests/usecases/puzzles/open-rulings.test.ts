import { describe, expect, test } from 'vitest';
import { BENEFIT_OF_DOUBT } from '#lib/book/solution-book.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { listDoubtfulGroups } from '#lib/store/doubtful.ts';
import { holdReveal } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { claimAnswers } from '#lib/store/work-list.ts';
import { loadBook } from '#lib/usecases/answers/loaded-book.ts';
import { markWithin } from '#lib/usecases/answers/mark-answers.ts';
import { settleDoubtful } from '#lib/usecases/answers/settle-doubtful.ts';
import { showReceipt } from '#lib/usecases/answers/show-receipt.ts';
import { listOpenRulings } from '#lib/usecases/puzzles/open-rulings.ts';
import { revealPuzzle } from '#lib/usecases/puzzles/reveal-puzzle.ts';
import { showSolution } from '#lib/usecases/puzzles/show-solution.ts';
import { markEverything, send } from '../../support/build-solution.ts';
import { buildUnclear, closeNow, outcomesOf } from '../../support/build-unclear.ts';
import { givenDatabase } from '../../support/database.ts';
import { jobsOf } from '../../support/deeds.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();

const SECOND = 'd1h1 b5d7 g6b1';

async function closed(lines: readonly string[], texts: readonly string[]) {
  const puzzle = await buildUnclear(lines);
  const sent = [];
  for (const text of texts) sent.push(await send(puzzle.slug, text, { name: `Viewer ${sent.length}` }));
  await markEverything(puzzle.puzzleId, puzzle.terms);
  await closeNow(puzzle.puzzleId);
  return { ...puzzle, tokens: sent.map((one) => one.token) };
}

async function openOf(puzzleId: number) {
  const puzzle = await loadPuzzle(db(), { id: puzzleId });
  if (puzzle === null) throw new Error('no such puzzle');
  return listOpenRulings(db(), puzzle);
}

async function markOf(token: string) {
  return accepted(await showReceipt({ token, locale: 'en' })).mark;
}

describe('[V8] a reveal with rulings open', () => {
  test('[V8] lists them first, by move and position, with the number of answers; other doubts do not block', async () => {
    const { puzzleId } = await closed(['d1h1', SECOND], ['1.Rh1', 'Rh1!', '1.Qd6+', 'Nxx5+']);
    const reason = refused(await revealPuzzle({ puzzleId, memberId: null }));
    expect(reason).toMatchObject({ code: 'rulings-open', others: 1 });
    if (reason.code !== 'rulings-open') return;
    expect(reason.open.map(({ line, answers }) => [line, answers])).toEqual([[['d1h1'], 2]]);
    const puzzle = await loadPuzzle(db(), { id: puzzleId });
    expect(puzzle?.revealedAt).toBeNull();
    expect(await db().ruling.count({ where: { puzzleId } })).toBe(0);
  });

  test('[V8] a move that comes up after the host looked is not agreed to', async () => {
    const { puzzleId } = await closed(['d1h1'], ['1.Rh1']);
    const stale = await revealPuzzle({ puzzleId, memberId: null, agreed: ['verdict a1a2 somewhere'] });
    expect(refused(stale).code).toBe('rulings-open');
    expect(await outcomesOf(puzzleId)).toEqual(['unclear']);
  });

  test('[V8] going on counts the move as holding, and nobody ever sees the unclear mark', async () => {
    const { puzzleId, memberId, tokens, slug } = await closed(
      ['d1h1', SECOND],
      ['1.Rh1 Bd7 2.Qb1', '1.Rh1 Bd7 2.Qb1!', '1.Qd6+'],
    );
    expect(await outcomesOf(puzzleId)).toEqual(['unclear', 'unclear', 'wrong']);
    const agreed = (await openOf(puzzleId)).open.map(({ doubt }) => doubt);
    accepted(await revealPuzzle({ puzzleId, memberId, agreed }));
    // The second unclear move, behind the first, was ruled on along with it.
    expect(await outcomesOf(puzzleId)).toEqual(['solved', 'solved', 'wrong']);
    const rulings = await db().ruling.findMany({ where: { puzzleId }, orderBy: { id: 'asc' } });
    expect(rulings.map(({ move, movesLeft, verdict, reason }) => [move, movesLeft, verdict, reason])).toEqual(
      [
        ['d1h1', 3, 'holds', BENEFIT_OF_DOUBT],
        ['g6b1', 2, 'holds', BENEFIT_OF_DOUBT],
      ],
    );
    expect(await listDoubtfulGroups(db(), puzzleId)).toEqual([]);
    const mark = await markOf(tokens[0] ?? '');
    expect(mark).toMatchObject({ outcome: 'solved', points: 5 });
    expect(mark?.flags).toContain('benefit-of-doubt');
    expect(mark?.explanation).toContain('benefit of the doubt');
    expect(mark?.ledger.rows.map((row) => [row.uci, row.verdict, row.isBenefit])).toEqual([
      ['d1h1', 'holds', true],
      ['b5d7', null, false],
      ['g6b1', 'holds', true],
    ]);
    const solution = accepted(await showSolution({ slug, locale: 'en', asks: 'd1h1' }));
    expect(solution.keys).toEqual(['d1h1']);
    expect(solution.asked).toMatchObject({ verdict: 'holds', isBenefit: true });
    expect(solution.solved).toBe(2);
  });

  test('[V8] where the rest of a line needs the engine first, the receipt waits instead of showing unclear', async () => {
    const { puzzleId, terms, tokens } = await closed(['d1h1'], ['1.Rh1 Bd7 2.Qb1']);
    const agreed = (await openOf(puzzleId)).open.map(({ doubt }) => doubt);
    accepted(await revealPuzzle({ puzzleId, memberId: null, agreed }));
    expect((await jobsOf(puzzleId)).has('extend-book')).toBe(true);
    expect(await markOf(tokens[0] ?? '')).toBeNull();
    await markEverything(puzzleId, terms);
    expect(await markOf(tokens[0] ?? '')).toMatchObject({ outcome: 'solved', points: 5 });
    expect((await markOf(tokens[0] ?? ''))?.flags).toContain('benefit-of-doubt');
  });

  test('[V8] what the host has ruled on is open no more, and carries no benefit', async () => {
    const { puzzleId, memberId, terms, tokens } = await closed(['d1h1', SECOND], ['1.Rh1 Bd7 2.Qb1']);
    for (let round = 0; round < 2; round += 1) {
      const doubt = (await openOf(puzzleId)).open[0]?.doubt ?? '';
      const settlement = { kind: 'verdict', verdict: 'holds' } as const;
      accepted(await settleDoubtful({ puzzleId, doubt, settlement, why: 'I have checked', memberId }));
      await markEverything(puzzleId, terms);
    }
    accepted(await revealPuzzle({ puzzleId, memberId }));
    const mark = await markOf(tokens[0] ?? '');
    expect([mark?.outcome, mark?.flags.includes('benefit-of-doubt')]).toEqual(['solved', false]);
  });

  test('[V8] the void of a puzzle asks for no ruling', async () => {
    const { puzzleId } = await closed(['d1h1'], ['1.Rh1']);
    accepted(await revealPuzzle({ puzzleId, memberId: null, asVoid: true }));
    expect(await db().ruling.count({ where: { puzzleId } })).toBe(0);
  });
});

test('[V8] a batch that began before the reveal leaves no unclear mark behind it', async () => {
  const { puzzleId, slug, memberId } = await closed(['d1h1', SECOND], ['1.Rh1 Bd7 2.Qb1']);
  await db()
    .$executeRaw`update puzzle set closes_at = clock_timestamp() + interval '1 hour' where id = ${puzzleId}`;
  await send(slug, '1.Rh1 Bd7 2.Qb1!');
  await closeNow(puzzleId);
  const agreed = (await openOf(puzzleId)).open.map(({ doubt }) => doubt);
  // The batch has its book and its answers; the host goes on before the marks are written.
  let reveal: ReturnType<typeof revealPuzzle> | null = null;
  await inTransaction(async (tx) => {
    await holdReveal(tx, puzzleId);
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    const book = puzzle === null ? null : await loadBook(tx, puzzle);
    const answers = await claimAnswers(tx, puzzleId);
    if (puzzle === null || book === null) throw new Error('no book');
    expect(answers).toHaveLength(1);
    reveal = revealPuzzle({ puzzleId, memberId, agreed });
    await new Promise((done) => setTimeout(done, 1000));
    await markWithin(tx, { puzzle, book, answers });
  });
  if (reveal !== null) accepted(await reveal);
  expect(await outcomesOf(puzzleId)).toEqual(['solved', 'solved']);
  // Nor did the two wait for each other until the database let one of them fall.
  await new Promise((done) => setTimeout(done, 1500));
  const [stats] = await db().$queryRaw<{ deadlocks: bigint }[]>`
    select deadlocks from pg_stat_database where datname = current_database()`;
  expect(Number(stats?.deadlocks)).toBe(0);
});
