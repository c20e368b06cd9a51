import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { cancelAmendment, proposeAmendment } from '#lib/usecases/puzzles/propose-amendment.ts';
import { showAmendment } from '#lib/usecases/puzzles/show-amendment.ts';
import { showDeskPuzzle } from '#lib/usecases/puzzles/show-desk-puzzle.ts';
import { verifyAmendment } from '#lib/usecases/puzzles/verify-amendment.ts';
import { buildVerified, PAWN_RACE, typedAmendment } from '../../support/amend.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';
import { accepted } from '../../support/positions.ts';

givenDatabase();

test('[A6] the page goes from the form over the progress to report and changes, and back after a cancel', async () => {
  const puzzle = await buildVerified(PAWN_RACE);
  const { puzzleId, memberId, showId } = puzzle;
  const show = async () => {
    const view = await showAmendment({ showId, puzzleId, locale: 'en' });
    if (view === null) throw new Error('no page');
    return view;
  };
  await send(puzzle.slug, '1.c6');
  expect(await show()).toMatchObject({
    amendment: null,
    answers: 1,
    typed: { terms: PAWN_RACE, title: 'A test puzzle', howFar: null, note: '' },
  });

  const change = { task: { kind: 'mate', moves: 4 }, published: ['1.c6 a6'] } as const;
  accepted(await proposeAmendment(await typedAmendment(puzzle, change, { title: 'Mate in four' })));
  expect((await show()).amendment).toMatchObject({
    state: 'waiting',
    report: [],
    changed: ['task', 'keys'],
    progress: { state: 'waiting' },
  });
  const desk = await showDeskPuzzle({ showId, puzzleId, locale: 'en' });
  expect(desk).toMatchObject({ isBeingAmended: true, progress: null });

  await verifyAmendment({ puzzleId, verify: verifyHere });
  const verified = await show();
  expect(verified.amendment).toMatchObject({
    state: 'verified',
    claim: 'true',
    title: 'Mate in four',
    note: 'A misprint, sorry.',
    needsReason: true,
  });
  expect(JSON.stringify(verified.amendment?.report)).toContain('mate in 4 can be forced');
  expect(verified.inForce.terms).toEqual(PAWN_RACE);

  accepted(await cancelAmendment({ puzzleId, memberId }));
  expect(await show()).toMatchObject({
    amendment: null,
    typed: { terms: { ...PAWN_RACE, ...change }, title: 'Mate in four', note: 'A misprint, sorry.' },
  });
});

test('[A8] another show’s puzzle, a draft and a void puzzle have no such page', async () => {
  const own = await buildShow();
  const other = await buildShow();
  const { puzzleId } = await buildPuzzle(own);
  const draft = await buildPuzzle(own, { isPublished: false });
  const gone = await buildPuzzle(own);
  await db().$executeRaw`update puzzle set voided_at = clock_timestamp() where id = ${gone.puzzleId}`;
  const shown = (showId: number, id: number) => showAmendment({ showId, puzzleId: id, locale: 'en' });
  expect(await shown(own.showId, puzzleId)).not.toBeNull();
  expect(await shown(other.showId, puzzleId)).toBeNull();
  expect(await shown(own.showId, draft.puzzleId)).toBeNull();
  expect(await shown(own.showId, gone.puzzleId)).toBeNull();
});
