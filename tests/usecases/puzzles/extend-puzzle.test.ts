import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { listCorrections } from '#lib/store/corrections.ts';
import { extendPuzzle } from '#lib/usecases/puzzles/extend-puzzle.ts';
import { revealPuzzle } from '#lib/usecases/puzzles/reveal-puzzle.ts';
import { showPublicPuzzle } from '#lib/usecases/puzzles/show-public-puzzle.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { revealNow } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { loggedOf } from '../../support/deeds.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();

async function build(times: Parameters<typeof buildPuzzle>[1] = {}) {
  const show = await buildShow();
  return { ...show, ...(await buildPuzzle(show, times)) };
}

const LATER = { closesAt: '2126-11-27T18:00', zone: 'Europe/Berlin', note: ' One more day. ' };

test('[A6] the close of an open puzzle is moved: a notice with both times and the words stands at the same address', async () => {
  const { puzzleId, memberId, slug } = await build();
  const { closesAt: before } = await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } });
  accepted(await extendPuzzle({ puzzleId, memberId, ...LATER }));
  const to = new Date('2126-11-27T17:00:00Z');
  const { puzzle } = accepted(await showPublicPuzzle({ slug, locale: 'en' }));
  expect(puzzle).toMatchObject({ slug, closesAt: to, state: 'open', revision: 1 });
  expect(puzzle.corrections).toMatchObject([
    { kind: 'extended', note: 'One more day.', changed: [], from: before, to },
  ]);
  expect(await loggedOf(puzzleId)).toEqual([
    ['close-moved', { from: before?.toISOString(), to: to.toISOString() }],
  ]);
});

test('[A6] a puzzle that the public does not know yet needs no notice', async () => {
  const { puzzleId, memberId } = await build({ opens: 10, closes: 60 });
  accepted(await extendPuzzle({ puzzleId, memberId, ...LATER }));
  expect(await listCorrections(db(), puzzleId)).toEqual([]);
});

test('[A6] it is moved after the close, and the puzzle is open again', async () => {
  const { puzzleId, memberId, slug } = await build({ closes: -5 });
  accepted(await extendPuzzle({ puzzleId, memberId, ...LATER }));
  const { puzzle } = accepted(await showPublicPuzzle({ slug, locale: 'en' }));
  expect(puzzle.state).toBe('open');
  expect(puzzle.corrections).toHaveLength(1);
});

test.each([
  ['a time that is none', { closesAt: 'soon' }, { code: 'time', field: 'closesAt', found: 'soon' }],
  ['an hour that the clocks skip', { closesAt: '2126-03-31T02:30' }, { code: 'time-skipped' }],
  ['an unknown zone', { zone: 'Mars/Olympus' }, { code: 'zone' }],
  ['a note without end', { note: 'x'.repeat(501) }, { code: 'note-too-long', length: 501, most: 500 }],
  ['a close before the opening', { closesAt: '2020-01-01T00:00' }, { code: 'close-not-after-opening' }],
])('[A6] %s is refused with what was expected, and nothing is moved', async (_what, typed, reason) => {
  const { puzzleId, memberId } = await build();
  const before = await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } });
  expect(refused(await extendPuzzle({ puzzleId, memberId, ...LATER, ...typed }))).toMatchObject(reason);
  const after = await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } });
  expect(after.closesAt).toEqual(before.closesAt);
  expect(await listCorrections(db(), puzzleId)).toEqual([]);
});

test('[F7] an earlier close that has passed already is refused: who was told "in time" stays so', async () => {
  const { puzzleId, memberId } = await build({ opens: -120, closes: 60 });
  const closesAt = new Date(Date.now() - 30 * 60_000).toISOString().slice(0, 16);
  const reason = refused(await extendPuzzle({ puzzleId, memberId, closesAt, zone: 'UTC', note: '' }));
  expect(reason).toEqual({ code: 'close-is-past', state: 'open' });
});

test('[A6] the close that stands already is no move: no second notice', async () => {
  const { puzzleId, memberId } = await build();
  accepted(await extendPuzzle({ puzzleId, memberId, ...LATER }));
  expect(refused(await extendPuzzle({ puzzleId, memberId, ...LATER }))).toEqual({ code: 'close-unchanged' });
  expect(await listCorrections(db(), puzzleId)).toHaveLength(1);
});

test('[A6] after the reveal, and once it is void, the close stays', async () => {
  const shown = await build();
  await revealNow(shown.puzzleId);
  const gone = await build();
  accepted(await revealPuzzle({ puzzleId: gone.puzzleId, memberId: null, asVoid: true }));
  for (const [one, state] of [
    [shown, 'revealed'],
    [gone, 'void'],
  ] as const) {
    const reason = refused(await extendPuzzle({ puzzleId: one.puzzleId, memberId: one.memberId, ...LATER }));
    expect(reason).toMatchObject({ code: 'wrong-state', state });
  }
});
