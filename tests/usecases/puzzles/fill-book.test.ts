import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { fillBook } from '#lib/usecases/puzzles/fill-book.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

test('[V1] the book holds a verdict on every first move, and what is in it is not asked again', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
  const book = await fillBook({ puzzleId, terms: MATE_IN_ONE, verify: verifyHere });
  const rows = await db().bookRow.findMany({ where: { puzzleId, movesLeft: 1 } });
  expect(book?.size).toBe(await db().bookRow.count({ where: { puzzleId } }));
  expect(rows.filter((row) => row.verdict === 'holds').map((row) => row.move)).toEqual(['a1a8']);
  const never = () => Promise.reject(new Error('was asked again'));
  expect((await fillBook({ puzzleId, terms: MATE_IN_ONE, verify: never }))?.size).toBe(book?.size);
});

test('where nobody wants it any more, nothing is asked', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow(), { isPublished: false });
  const never = () => Promise.reject(new Error('was asked'));
  const isWanted = async () => false;
  expect(await fillBook({ puzzleId, terms: MATE_IN_ONE, verify: never, isWanted })).toBeNull();
});
