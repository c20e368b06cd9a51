import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { revealPuzzle } from '#lib/usecases/puzzles/reveal-puzzle.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function reveal(puzzleId: number, asVoid = false) {
  const done = await revealPuzzle({ puzzleId, memberId: null, asVoid });
  return done.ok ? 'done' : done.reason.code;
}

test('a closed puzzle is revealed once; an open one is not', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { closes: -1 });
  expect(await reveal(puzzleId)).toBe('done');
  expect((await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } })).revealedAt).not.toBeNull();
  expect(await reveal(puzzleId)).toBe('wrong-state');
  expect(await reveal((await buildPuzzle(await buildShow())).puzzleId)).toBe('wrong-state');
  expect(await db().log.count({ where: { puzzleId, kind: 'puzzle-revealed' } })).toBe(1);
});

test('[A6] a published puzzle can be declared void, also while it is open', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow());
  expect(await reveal(puzzleId, true)).toBe('done');
  expect((await db().puzzle.findUniqueOrThrow({ where: { id: puzzleId } })).voidedAt).not.toBeNull();
  expect(await reveal(999_999, true)).toBe('unknown-puzzle');
});
