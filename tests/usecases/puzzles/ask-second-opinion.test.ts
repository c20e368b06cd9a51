import { describe, expect, test } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { askSecondOpinion } from '#lib/usecases/puzzles/ask-second-opinion.ts';
import { changeDraft } from '#lib/usecases/puzzles/change-draft.ts';
import { listDeskPuzzles } from '#lib/usecases/puzzles/list-desk-puzzles.ts';
import { showDeskPuzzle } from '#lib/usecases/puzzles/show-desk-puzzle.ts';
import { verifyPuzzle } from '#lib/usecases/puzzles/verify-puzzle.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';
import { START_FEN } from '../../support/positions.ts';
import { oddProgramIn, ownEngineIn } from '../../support/uci-programs/program-file.ts';

const database = givenDatabase();

// The odd program always plays e2e4: legal at the start of a game, illegal in the back-rank mate.
const FROM_THE_START: PuzzleTerms = { ...DEFAULT_TERMS, fen: START_FEN, task: { kind: 'draw' } };

async function build(terms: PuzzleTerms) {
  const show = await buildShow();
  const { puzzleId } = await buildPuzzle(show, { terms, isPublished: false });
  return { puzzleId, showId: show.showId };
}

async function kept(puzzleId: number): Promise<unknown> {
  return (await loadPuzzle(db(), { id: puzzleId }))?.secondOpinion;
}

async function rowOnTheDesk(place: { puzzleId: number; showId: number }, locale: 'en' | 'de') {
  const view = await showDeskPuzzle({ ...place, locale });
  return view?.report.find((part) => part.kind === 'opinion')?.sentences[0];
}

describe('what the program says is kept beside the puzzle', () => {
  test('our own engine, driven through its protocol, names the mate, and the desk says so', async () => {
    const place = await build(MATE_IN_ONE);
    await verifyPuzzle({ puzzleId: place.puzzleId, verify: verifyHere });
    await askSecondOpinion({ puzzleId: place.puzzleId, program: ownEngineIn(database.dataDir) });
    expect(await kept(place.puzzleId)).toMatchObject({ v: 1, kind: 'move', move: 'a1a8', mateIn: 1 });
    expect(await rowOnTheDesk(place, 'en')).toMatch(
      /^The program that you named \(“Tailpiece.*”\) would play 1 Ra8# \(mate in 1, depth \d+\)\.$/,
    );
    expect(await rowOnTheDesk(place, 'de')).toMatch(/würde 1 Ta8# spielen \(Matt in 1, Tiefe \d+\)\.$/);
  });

  test('another program: its own name, its value and its depth', async () => {
    const { puzzleId } = await build(FROM_THE_START);
    await askSecondOpinion({ puzzleId, program: oddProgramIn(database.dataDir, 'none') });
    expect(await kept(puzzleId)).toEqual({
      v: 1,
      kind: 'move',
      name: 'Odd One',
      move: 'e2e4',
      depth: 9,
      centipawns: 31,
      mateIn: null,
    });
  });

  test('a name with bytes that cannot be stored loses them', async () => {
    const { puzzleId } = await build(FROM_THE_START);
    await askSecondOpinion({ puzzleId, program: oddProgramIn(database.dataDir, 'odd-name') });
    expect(await kept(puzzleId)).toMatchObject({ kind: 'move', name: 'Odd[31m One' });
  });
});

describe('a program that fails leaves a sentence and no more', () => {
  test.each([
    ['illegal-move', 'illegal-move', /the move that it named is not legal here\.$/],
    ['never-answers', 'no-answer', /it took too long\.$/],
    ['dies', 'ended', /it ended before it had answered\.$/],
  ])('%s', async (fault, code, sentence) => {
    const place = await build(MATE_IN_ONE);
    await verifyPuzzle({ puzzleId: place.puzzleId, verify: verifyHere });
    const program = oddProgramIn(database.dataDir, fault);
    await askSecondOpinion({ puzzleId: place.puzzleId, program, budgetMs: 1500 });
    expect(await kept(place.puzzleId)).toEqual({ v: 1, kind: 'none', fault: code });
    expect(await rowOnTheDesk(place, 'en')).toMatch(sentence);
    expect((await loadPuzzle(db(), { id: place.puzzleId }))?.claim).toBe('true');
  });

  test('nothing lies at the path', async () => {
    const { puzzleId } = await build(MATE_IN_ONE);
    await askSecondOpinion({ puzzleId, program: '/nowhere/program' });
    expect(await kept(puzzleId)).toEqual({ v: 1, kind: 'none', fault: 'cannot-start' });
  });
});

test('[F10] a program that was set aside is not asked: a sentence in the report, an alarm on the desk', async () => {
  const place = await build(MATE_IN_ONE);
  await verifyPuzzle({ puzzleId: place.puzzleId, verify: verifyHere });
  expect((await listDeskPuzzles(place.showId)).isProgramSetAside).toBe(false);
  expect(await askSecondOpinion({ puzzleId: place.puzzleId, program: null })).toBe('none');
  expect(await kept(place.puzzleId)).toEqual({ v: 1, kind: 'none', fault: 'set-aside' });
  expect(await rowOnTheDesk(place, 'en')).toMatch(/^It was not asked: it had failed three times in a row/);
  expect((await listDeskPuzzles(place.showId)).isProgramSetAside).toBe(true);
  const program = oddProgramIn(database.dataDir, 'dies');
  expect(await askSecondOpinion({ puzzleId: place.puzzleId, program })).toBe('failed');
  expect((await listDeskPuzzles(place.showId)).isProgramSetAside).toBe(false);
});

describe('an opinion belongs to its position', () => {
  test('changed terms drop it', async () => {
    const { puzzleId } = await build(MATE_IN_ONE);
    await askSecondOpinion({ puzzleId, program: '/nowhere/program' });
    await changeDraft({ puzzleId, terms: { ...MATE_IN_ONE, mateWritten: true }, memberId: null });
    expect(await kept(puzzleId)).toBeNull();
  });

  test('one that comes after the position was changed is not kept', async () => {
    const { puzzleId } = await build(MATE_IN_ONE);
    const program = oddProgramIn(database.dataDir, 'never-answers');
    const asking = askSecondOpinion({ puzzleId, program, budgetMs: 1500 });
    await new Promise((resolve) => setTimeout(resolve, 500));
    await db().puzzle.update({ where: { id: puzzleId }, data: { fen: START_FEN } });
    await asking;
    expect(await kept(puzzleId)).toBeNull();
  });

  test('a puzzle that was removed is not asked about', async () => {
    await expect(askSecondOpinion({ puzzleId: 987_654, program: '/nowhere' })).resolves.toBe('none');
  });
});
