import { describe, expect, test } from 'vitest';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { markAnswer } from '#lib/marking/mark-answer.ts';
import { db } from '#lib/store/client.ts';
import { listCorrections } from '#lib/store/corrections.ts';
import { listFormerTerms } from '#lib/store/former-terms.ts';
import { loadCurrentMark } from '#lib/store/marks.ts';
import { loadPuzzle, loadTerms } from '#lib/store/puzzles.ts';
import { loadOpenRegrade } from '#lib/store/regrades.ts';
import { loadBook } from '#lib/usecases/answers/loaded-book.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { extendBook } from '#lib/usecases/puzzles/extend-book.ts';
import { proposeAmendment } from '#lib/usecases/puzzles/propose-amendment.ts';
import { putAmendmentInForce } from '#lib/usecases/puzzles/put-amendment-in-force.ts';
import { showPublicPuzzle } from '#lib/usecases/puzzles/show-public-puzzle.ts';
import { showSolution } from '#lib/usecases/puzzles/show-solution.ts';
import { verifyAmendment } from '#lib/usecases/puzzles/verify-amendment.ts';
import { showSheet } from '#lib/usecases/readout/show-sheet.ts';
import { amend, buildVerified, PAWN_RACE, typedAmendment } from '../../support/amend.ts';
import { MATE_IN_ONE } from '../../support/build-show.ts';
import { revealNow, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { jobsOf, loggedOf } from '../../support/deeds.ts';
import { verifyHere } from '../../support/engine-in-process.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();

/** The rook of MATE_IN_ONE on b1: Rb8 mates, Ra8 cannot be played. */
const ROOK_B1 = { fen: '6k1/5ppp/8/8/8/8/5PPP/1R4K1 w - - 0 1', published: ['Rb8#'] };

type Puzzle = Awaited<ReturnType<typeof buildVerified>>;

async function markAll({ puzzleId }: Puzzle): Promise<void> {
  for (;;) {
    await markAnswers({ puzzleId });
    if ((await extendBook({ puzzleId, verify: verifyHere })) === 0) return;
  }
}

/** Outcome and revision of the mark in force, e.g. "solved on 1". */
async function markOf(answerId: number): Promise<string> {
  const mark = await loadCurrentMark(db(), answerId);
  return mark === null ? 'none' : `${mark.outcome} on ${mark.revision}`;
}

/** A comment, as an import takes it in; times in minutes from now. */
async function comment(
  { puzzleId, showId }: Puzzle,
  text: string,
  stated: [number, number],
): Promise<number> {
  const solver = await db().solver.create({ data: { showId } });
  const at = (minutes: number) => new Date(Date.now() + minutes * 60_000);
  const data = { puzzleId, solverId: solver.id, text, channel: 'comment' };
  const row = await db().answer.create({
    data: { ...data, statedFrom: at(stated[0]), statedTo: at(stated[1]) },
  });
  return row.id;
}

describe('[A6] a corrected position', () => {
  test('early answers by time, later ones by the word of their page, the rest on the kinder', async () => {
    const puzzle = await buildVerified(MATE_IN_ONE, { opens: -60, closes: 60 });
    const early = await send(puzzle.slug, 'Ra8#');
    const wrongEarly = await send(puzzle.slug, 'Rb1');
    const before = await comment(puzzle, 'Ra8#', [-50, -40]);
    await markAll(puzzle);
    expect(await markOf(early.answerId)).toBe('solved on 1');

    expect(await amend(puzzle, ROOK_B1)).toBe(2);
    const openPage = await send(puzzle.slug, 'Ra8#', { seen: '1' });
    const openPageWrong = await send(puzzle.slug, 'Rb8#', { seen: '1' });
    const newPage = await send(puzzle.slug, 'Ra8#', { seen: '2' });
    const newPageRight = await send(puzzle.slug, 'Rb8#', { seen: 2 });
    const untoldOld = await send(puzzle.slug, 'Ra8#');
    const untoldNew = await send(puzzle.slug, 'Rb8#');
    const untoldWrong = await send(puzzle.slug, 'Kf1');
    const coarse = await comment(puzzle, 'Ra8#', [-50, 10]);
    const forged = await send(puzzle.slug, 'Rb8#', { seen: { $gt: 0 } });
    await markAll(puzzle);
    const marks = async (...ids: number[]) => Promise.all(ids.map(markOf));
    expect(await marks(early.answerId, wrongEarly.answerId, before)).toEqual([
      'solved on 1',
      'wrong on 1',
      'solved on 1',
    ]);
    expect(await marks(openPage.answerId, openPageWrong.answerId)).toEqual([
      'solved on 1',
      'impossible on 1',
    ]);
    expect(await marks(newPage.answerId, newPageRight.answerId)).toEqual(['unreadable on 2', 'solved on 2']);
    expect(await marks(untoldOld.answerId, untoldNew.answerId, coarse, forged.answerId)).toEqual([
      'solved on 1',
      'solved on 2',
      'solved on 1',
      'solved on 2',
    ]);
    expect(await markOf(untoldWrong.answerId), 'the same on both: the newest').toBe('wrong on 2');
  });

  test('former terms are kept, the address stays, the notice stands, and what is stored follows', async () => {
    const puzzle = await buildVerified(MATE_IN_ONE, { opens: -60, closes: 60 });
    const { puzzleId, slug, memberId } = puzzle;
    await db().puzzle.update({ where: { id: puzzleId }, data: { secondOpinion: { v: 1 } } });
    await amend(puzzle, ROOK_B1);
    const record = await loadPuzzle(db(), { id: puzzleId });
    if (record === null) throw new Error('gone');
    expect(record).toMatchObject({ slug, revision: 2, claim: 'true', secondOpinion: null });
    expect(record.report).toMatchObject({ publishedLines: [{ text: 'Rb8#', outcome: 'solved' }] });
    expect(await loadTerms(db(), record)).toEqual({ ...MATE_IN_ONE, ...ROOK_B1 });
    const [former, ...more] = await listFormerTerms(db(), record);
    expect(former).toMatchObject({ revision: 1, terms: MATE_IN_ONE, engineVersion: record.engineVersion });
    expect(more).toEqual([]);
    const { puzzle: shown } = accepted(await showPublicPuzzle({ slug, locale: 'en' }));
    expect(shown).toMatchObject({ slug, revision: 2, fen: ROOK_B1.fen });
    expect(shown.corrections).toMatchObject([
      { kind: 'amended', note: 'A misprint, sorry.', changed: ['position'] },
    ]);
    expect((await loggedOf(puzzleId)).at(-1)).toMatchObject([
      'puzzle-amended',
      { revision: 2, changed: ['position', 'keys'], claim: 'true', overridden: false },
    ]);
    expect([...(await jobsOf(puzzleId)).keys()]).toContain('mark-answers');
    const again = putAmendmentInForce({ puzzleId, memberId, overrideReason: null });
    expect(refused(await again)).toEqual({ code: 'no-amendment' });
  });

  test('the line that a sender chose is looked for in the position that was seen', async () => {
    const puzzle = await buildVerified(MATE_IN_ONE, { opens: -60, closes: 60 });
    await amend(puzzle, ROOK_B1);
    const stale = await send(puzzle.slug, 'Ra8#', { seen: '1', meant: ['a1a8'] });
    const untold = await send(puzzle.slug, 'Ra8#', { meant: ['a1a8'] });
    await markAll(puzzle);
    expect([await markOf(stale.answerId), await markOf(untold.answerId)]).toEqual([
      'solved on 1',
      'solved on 1',
    ]);
  });

  test('before the opening nobody has seen what was wrong: no notice, and no answer is judged on it', async () => {
    const puzzle = await buildVerified(MATE_IN_ONE, { opens: 10, closes: 60 });
    await amend(puzzle, ROOK_B1);
    expect(await listCorrections(db(), puzzle.puzzleId)).toEqual([]);
    await db().$executeRaw`
      update puzzle set opens_at = clock_timestamp() where id = ${puzzle.puzzleId}`;
    const untold = await send(puzzle.slug, 'Ra8#');
    await markAll(puzzle);
    expect(await markOf(untold.answerId)).toBe('unreadable on 2');
  });

  test('[A4] the same text on the same terms and book gives the same mark without a database', async () => {
    const puzzle = await buildVerified(MATE_IN_ONE, { opens: -60, closes: 60 });
    const { answerId } = await send(puzzle.slug, 'Ra8#');
    await amend(puzzle, ROOK_B1);
    await markAll(puzzle);
    const mark = await loadCurrentMark(db(), answerId);
    const record = await loadPuzzle(db(), { id: puzzle.puzzleId });
    const loaded = record === null ? null : await loadBook(db(), record, mark?.revision);
    if (loaded === null || mark === null) throw new Error('gone');
    expect(loaded.terms.fen).toBe(MATE_IN_ONE.fen);
    const shadow = markAnswer({ ...loaded, text: 'Ra8#' });
    expect(shadow).toMatchObject({ kind: 'mark', mark: { outcome: mark.outcome, points: mark.points } });
  });
});

describe('[A6] a corrected task: mate in three becomes mate in four', () => {
  test('a mate that came a move later is slower for who saw three and solved for who saw four', async () => {
    const puzzle = await buildVerified(PAWN_RACE, { opens: -60, closes: 60 });
    const line = '1.e4 a6 2.c6 a5 3.c7 a4 4.c8=Q#';
    const early = await send(puzzle.slug, line);
    const key = await send(puzzle.slug, '1.c6 a6 2.c7');
    await amend(puzzle, { task: { kind: 'mate', moves: 4 } });
    const told = await send(puzzle.slug, line, { seen: '2' });
    const untold = await send(puzzle.slug, line);
    await markAll(puzzle);
    expect([await markOf(early.answerId), await markOf(told.answerId)]).toEqual([
      'slower on 1',
      'solved on 2',
    ]);
    expect(await markOf(untold.answerId), 'the kinder').toBe('solved on 2');
    expect(await markOf(key.answerId)).toBe('solved on 1');
  });
});

test('[A6] corrected keys hold for everybody: nobody saw a difference', async () => {
  const lines = { published: ['1.e4 a6 2.c6'] };
  const puzzle = await buildVerified({ ...PAWN_RACE, ...lines }, { opens: -60, closes: 60 });
  const early = await send(puzzle.slug, '1.c6 a6 2.c7');
  await markAll(puzzle);
  expect((await loadCurrentMark(db(), early.answerId))?.flags).toContain('other-way');
  await amend(puzzle, { published: PAWN_RACE.published });
  await markAll(puzzle);
  expect(await markOf(early.answerId)).toBe('solved on 2');
  expect((await loadCurrentMark(db(), early.answerId))?.flags).not.toContain('other-way');
  const { puzzle: shown } = accepted(await showPublicPuzzle({ slug: puzzle.slug, locale: 'en' }));
  expect(shown.corrections, 'not before the reveal').toMatchObject([{ changed: [] }]);
});

describe('[A5, V9] what cannot take force', () => {
  const begin = async (terms: PuzzleTerms, change: Partial<PuzzleTerms>) => {
    const puzzle = await buildVerified(terms, { opens: -60, closes: 60 });
    accepted(await proposeAmendment(await typedAmendment(puzzle, change)));
    return puzzle;
  };
  const put = ({ puzzleId, memberId }: Puzzle, overrideReason: string | null) =>
    putAmendmentInForce({ puzzleId, memberId, overrideReason });

  test('terms that are not verified yet', async () => {
    const puzzle = await begin(MATE_IN_ONE, ROOK_B1);
    expect(refused(await put(puzzle, null))).toEqual({ code: 'not-verified', state: 'open' });
  });

  test('a claim proved false, whatever reason is given', async () => {
    const puzzle = await begin(PAWN_RACE, { task: { kind: 'mate', moves: 2 } });
    await verifyAmendment({ puzzleId: puzzle.puzzleId, verify: verifyHere });
    for (const reason of [null, 'I am sure.'])
      expect(refused(await put(puzzle, reason))).toEqual({ code: 'claim-false', state: 'open' });
    expect((await loadPuzzle(db(), { id: puzzle.puzzleId }))?.revision).toBe(1);
  });

  test('an unclear claim without a reason; with one it takes force, and the reason stays with the puzzle', async () => {
    const puzzle = await buildVerified(PAWN_RACE, { opens: -60, closes: 60 });
    const { puzzleId } = puzzle;
    // So few nodes that nothing can be settled.
    await db().puzzle.update({ where: { id: puzzleId }, data: { proofNodes: 1 } });
    const change = { task: { kind: 'mate', moves: 4 }, published: [] } as const;
    accepted(await proposeAmendment(await typedAmendment(puzzle, change)));
    await verifyAmendment({ puzzleId, verify: verifyHere });
    expect(refused(await put(puzzle, ' '))).toEqual({ code: 'claim-unclear-without-reason', state: 'open' });
    accepted(await put(puzzle, 'Seen in print.'));
    const row = await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } });
    expect(row).toMatchObject({ claim: 'unclear', claimOverride: 'Seen in print.', revision: 2 });
    expect((await loggedOf(puzzleId)).at(-1)?.[1]).toMatchObject({ overridden: true });
    expect(JSON.stringify(await loggedOf(puzzleId))).not.toContain('Seen in print');
  });

  test('a published line that fails its own marking, without a reason', async () => {
    const puzzle = await begin(MATE_IN_ONE, { ...ROOK_B1, published: ['Kf1'] });
    await verifyAmendment({ puzzleId: puzzle.puzzleId, verify: verifyHere });
    expect(refused(await put(puzzle, null))).toEqual({
      code: 'published-line-fails',
      state: 'open',
      lines: 1,
    });
    expect(accepted(await put(puzzle, 'It is only the beginning.'))).toBe(2);
  });

  test('a puzzle made void meanwhile', async () => {
    const puzzle = await begin(MATE_IN_ONE, ROOK_B1);
    await verifyAmendment({ puzzleId: puzzle.puzzleId, verify: verifyHere });
    await db().$executeRaw`update puzzle set voided_at = clock_timestamp() where id = ${puzzle.puzzleId}`;
    expect(refused(await put(puzzle, null))).toMatchObject({ code: 'wrong-state', state: 'void' });
  });

  test('of two at once one takes force', async () => {
    const puzzle = await begin(MATE_IN_ONE, ROOK_B1);
    await verifyAmendment({ puzzleId: puzzle.puzzleId, verify: verifyHere });
    const both = await Promise.all([put(puzzle, null), put(puzzle, null)]);
    expect(both.filter((one) => one.ok)).toHaveLength(1);
    expect(await listCorrections(db(), puzzle.puzzleId)).toHaveLength(1);
  });
});

test('[A6, A7] after the reveal the notice names the solution too, and no mark changes without the host', async () => {
  const puzzle = await buildVerified(MATE_IN_ONE, { opens: -60, closes: 60 });
  const { answerId } = await send(puzzle.slug, 'Ra8#');
  const untold = await send(puzzle.slug, 'Rb8#', { seen: '1' });
  await markAll(puzzle);
  await revealNow(puzzle.puzzleId);
  await amend(puzzle, ROOK_B1);
  await markAll(puzzle);
  expect([await markOf(answerId), await markOf(untold.answerId)]).toEqual(['solved on 1', 'impossible on 1']);
  expect(await loadOpenRegrade(db(), puzzle.puzzleId)).not.toBeNull();
  const { puzzle: shown } = accepted(await showPublicPuzzle({ slug: puzzle.slug, locale: 'en' }));
  expect(shown.corrections).toMatchObject([{ changed: ['position', 'keys'] }]);
});

test('[A6] a second amendment: three revisions, each answer on its own', async () => {
  const puzzle = await buildVerified(MATE_IN_ONE, { opens: -60, closes: 60 });
  const first = await send(puzzle.slug, 'Ra8#');
  await amend(puzzle, ROOK_B1);
  const second = await send(puzzle.slug, 'Rb8#', { seen: '2' });
  const between = await send(puzzle.slug, 'Rc8#');
  await amend(puzzle, { fen: '6k1/5ppp/8/8/8/8/5PPP/2R3K1 w - - 0 1', published: ['Rc8#'] });
  const third = await send(puzzle.slug, 'Rc8#', { seen: '3' });
  const untold = await send(puzzle.slug, 'Ra8#');
  await markAll(puzzle);
  const all = [first, second, third, untold];
  expect(await Promise.all(all.map(({ answerId }) => markOf(answerId)))).toEqual([
    'solved on 1',
    'solved on 2',
    'solved on 3',
    'solved on 1',
  ]);
  expect(await markOf(between.answerId), 'the third had not been seen').toBe('unreadable on 2');
  expect(await listCorrections(db(), puzzle.puzzleId)).toHaveLength(2);
});

test('[A6] figures of the solution page and the sheet count the position in force; who solved the other is named all the same', async () => {
  const puzzle = await buildVerified(MATE_IN_ONE, { opens: -60, closes: 60 });
  const { puzzleId, slug } = puzzle;
  await send(slug, 'Ra8#', { name: 'Early Ann' });
  await amend(puzzle, ROOK_B1);
  await send(slug, 'Rb8#', { name: 'Later Ben', seen: '2' });
  await send(slug, 'Kf1', { name: 'Later Cy', seen: '2' });
  await markAll(puzzle);
  await revealNow(puzzleId);
  const shown = accepted(await showSolution({ slug, locale: 'en', asks: null }));
  expect(shown.keys).toEqual(['b1b8']);
  expect(shown.firstMoves.map(({ move, count }) => [move, count])).toEqual([
    ['b1b8', 1],
    ['g1f1', 1],
  ]);
  expect([shown.answers, shown.roll.names]).toEqual([2, ['Early Ann', 'Later Ben']]);
  const sheet = accepted(await showSheet({ puzzleId, locale: 'en', length: 60, wordsAMinute: 150 }));
  expect(sheet.text).toContain('Two of you answered');
  expect(sheet.sheet.names.map((one) => one.name).sort()).toEqual(['Early Ann', 'Later Ben']);
});
