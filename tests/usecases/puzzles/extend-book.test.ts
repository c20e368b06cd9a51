import { expect, test } from 'vitest';
import type { BookRow, Lacking } from '#lib/book/book-row.ts';
import { db } from '#lib/store/client.ts';
import { addWants } from '#lib/store/wants.ts';
import { extendBook, type Verify } from '#lib/usecases/puzzles/extend-book.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

function rowOf({ position, movesLeft, move }: Lacking): BookRow {
  const nothing = { mateIn: null, value: null, evident: null, stillWinning: null };
  return {
    ...{ position, movesLeft, move, ...nothing, verdict: 'slips', depth: 0, nodes: 1 },
    ...{ evidence: { kind: 'budget' }, replies: [], adequate: [], check: 'passed', engineVersion: 'test' },
  };
}

test('wants are taken in turn by answer, the host first, and every answer is put back when it lacks nothing', async () => {
  const show = await buildShow();
  const { puzzleId } = await buildPuzzle(show);
  const answers: number[] = [];
  for (const name of ['one', 'two']) {
    const solver = await db().solver.create({ data: { showId: show.showId } });
    const data = {
      puzzleId,
      solverId: solver.id,
      text: name,
      channel: 'page',
      clientKey: `${name}${puzzleId}`,
      work: 'lacking',
    };
    answers.push((await db().answer.create({ data })).id);
  }
  const want = (position: string): Lacking => ({ fen: position, position, movesLeft: 1, move: 'a1a2' });
  const [one = 0, two = 0] = answers;
  await addWants(db(), puzzleId, one, [want('1a'), want('1b'), want('1c')], 0);
  await addWants(db(), puzzleId, two, [want('2a'), want('1b')], 0);
  await addWants(db(), puzzleId, null, [want('host')], 0);
  const order: string[] = [];
  const put: number[][] = [];
  const verify: Verify = async ({ lacking }) => {
    order.push(lacking.map((asked) => asked.position).join());
    put.push((await db().answer.findMany({ where: { puzzleId, work: 'to-mark' } })).map((row) => row.id));
    return lacking.map(rowOf);
  };
  expect(await extendBook({ puzzleId, verify })).toBe(5);
  expect(order).toEqual(['host', '1a', '2a', '1b', '1c']);
  expect(put.at(-1), 'the second answer waited for nothing of the first alone').toEqual([two]);
  expect(await db().answer.count({ where: { puzzleId, work: 'to-mark' } })).toBe(2);
  expect(await db().want.count({ where: { puzzleId } })).toBe(0);
});
