import { expect, test } from 'vitest';
import type { BookRow, Lacking, Wanted } from '#lib/book/book-row.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { db } from '#lib/store/client.ts';
import { appendFormerTerms } from '#lib/store/former-terms.ts';
import { addWants, countWants } from '#lib/store/wants.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { extendBook } from '#lib/usecases/puzzles/extend-book.ts';
import type { Verify } from '#lib/usecases/puzzles/fill-book.ts';
import { BACK_RANK, buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { jobsOf, loggedOf } from '../../support/deeds.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

function lacking(move: string): Wanted {
  return {
    fen: BACK_RANK,
    position: BACK_RANK.split(' ').slice(0, 4).join(' '),
    movesLeft: 1,
    move,
    revision: 1,
  };
}

async function build(text = 'Ra8#') {
  const { puzzleId, slug } = await buildPuzzle(await buildShow());
  const { answerId } = await send(slug, text);
  await db().answer.update({ where: { id: answerId }, data: { work: 'lacking' } });
  await db().$executeRaw`delete from graphile_worker._private_jobs`;
  return { puzzleId, answerId, slug };
}

const workOf = async (id: number) => (await db().answer.findUniqueOrThrow({ where: { id } })).work;

test('[V4] what an answer wanted joins the book, and the answer goes back on the work list', async () => {
  const { puzzleId, answerId } = await build();
  await addWants(db(), puzzleId, answerId, [lacking('a1a8'), lacking('g1f1')], 0);
  expect(await extendBook({ puzzleId, verify: verifyHere })).toBe(2);
  const rows = await db().bookRow.findMany({ where: { puzzleId }, orderBy: { move: 'asc' } });
  expect(rows.map((row) => [row.move, row.verdict])).toEqual([
    ['a1a8', 'holds'],
    ['g1f1', 'slips'],
  ]);
  expect(await countWants(db(), puzzleId)).toBe(0);
  expect(await workOf(answerId)).toBe('to-mark');
  expect([...(await jobsOf(puzzleId)).keys()]).toEqual(['mark-answers']);
  expect((await loggedOf(puzzleId)).at(-1)).toEqual(['book-extended', { rows: 2 }]);
});

test('a verdict that the book has already is no new one, and the answer is freed all the same', async () => {
  const { puzzleId, answerId } = await build();
  await addWants(db(), puzzleId, null, [lacking('a1a8')], 0);
  expect(await extendBook({ puzzleId, verify: verifyHere })).toBe(1);
  await addWants(db(), puzzleId, answerId, [lacking('a1a8')], 0);
  expect(await extendBook({ puzzleId, verify: verifyHere })).toBe(0);
  expect(await workOf(answerId)).toBe('to-mark');
  expect(await db().bookRow.count({ where: { puzzleId } })).toBe(1);
});

test('a failed verification leaves what is wanted on the list for the next try', async () => {
  const { puzzleId, answerId } = await build();
  await addWants(db(), puzzleId, answerId, [lacking('a1a8')], 0);
  const dying = () => Promise.reject(new Error('the thread has gone'));
  await expect(extendBook({ puzzleId, verify: dying })).rejects.toThrow('the thread has gone');
  expect([await countWants(db(), puzzleId), await workOf(answerId)]).toEqual([1, 'lacking']);
});

test('a verdict that cannot be found holds up no other, not even of the same position', async () => {
  const { puzzleId, answerId, slug } = await build();
  const { answerId: otherId } = await send(slug, 'Kf1');
  await db().answer.update({ where: { id: otherId }, data: { work: 'lacking' } });
  await addWants(db(), puzzleId, answerId, [lacking('a1a8')], 0);
  await addWants(
    db(),
    puzzleId,
    otherId,
    [lacking('g1f1'), { ...lacking('a1a2'), position: 'elsewhere' }],
    0,
  );
  const dying: Verify = (question) =>
    question.lacking.some(({ move }) => move === 'a1a8')
      ? Promise.reject(new Error('the thread has gone'))
      : Promise.resolve(question.lacking.map(rowOf));
  await expect(extendBook({ puzzleId, verify: dying })).rejects.toThrow('the thread has gone');
  expect((await db().bookRow.findMany({ where: { puzzleId } })).map(({ move }) => move).sort()).toEqual([
    'a1a2',
    'g1f1',
  ]);
  expect([await workOf(answerId), await workOf(otherId)]).toEqual(['lacking', 'to-mark']);
});

test('what fails three times is given up: its answer asks no more and is marked as needing the host', async () => {
  const { puzzleId, answerId } = await build('Kf1');
  await addWants(db(), puzzleId, answerId, [lacking('g1f1')], 0);
  const dying = () => Promise.reject(new Error('the thread has gone'));
  for (const tries of [1, 2]) {
    await expect(extendBook({ puzzleId, verify: dying })).rejects.toThrow('the thread has gone');
    expect((await db().want.findMany({ where: { puzzleId } })).map((row) => row.tries)).toEqual([tries]);
  }
  expect(await extendBook({ puzzleId, verify: dying })).toBe(0);
  expect([await countWants(db(), puzzleId), await workOf(answerId)]).toEqual([0, 'to-mark']);
  expect(await markAnswers({ puzzleId })).toEqual({ marked: 1, lacking: 0 });
  const mark = await db().mark.findFirstOrThrow({ where: { answerId, isCurrent: true } });
  expect([mark.outcome, mark.points]).toEqual(['unclear', 0]);
});

test('a verifier that ends is no failed try', async () => {
  const { puzzleId, answerId } = await build();
  await addWants(db(), puzzleId, answerId, [lacking('a1a8')], 0);
  const ended = new Error('the pool was closed');
  const verify = () => Promise.reject(ended);
  await expect(extendBook({ puzzleId, verify, isItsEnd: (fault) => fault === ended })).rejects.toThrow(
    'closed',
  );
  expect((await db().want.findMany({ where: { puzzleId } })).map((row) => row.tries)).toEqual([0]);
});

test('where nothing is wanted or the puzzle is gone, nothing is asked', async () => {
  const { puzzleId } = await buildPuzzle(await buildShow());
  const never = () => Promise.reject(new Error('was asked'));
  expect(await extendBook({ puzzleId, verify: never })).toBe(0);
  expect(await extendBook({ puzzleId: 987_654, verify: never })).toBe(0);
});

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
  const want = (position: string): Wanted => ({
    fen: position,
    position,
    movesLeft: 1,
    move: 'a1a2',
    revision: 1,
  });
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

test('[A6] what was asked under replaced terms is verified under them and struck out alone', async () => {
  const { puzzleId, answerId } = await build();
  const former = { ...MATE_IN_ONE, proofNodes: 7 };
  await appendFormerTerms(db(), puzzleId, { revision: 1, terms: former, engineVersion: ENGINE_VERSION });
  await db().puzzle.update({ where: { id: puzzleId }, data: { revision: 2 } });
  await addWants(db(), puzzleId, answerId, [lacking('a1a8'), { ...lacking('a1a8'), revision: 2 }], 0);
  const asked: [number | undefined, number, number][] = [];
  const verify: Verify = async (question) => {
    const [first] = question.lacking;
    const revision = first !== undefined && 'revision' in first ? Number(first.revision) : undefined;
    asked.push([revision, question.terms.proofNodes, await countWants(db(), puzzleId)]);
    return verifyHere(question);
  };
  expect(await extendBook({ puzzleId, verify })).toBe(2);
  expect(asked).toEqual([
    [1, 7, 2],
    [2, MATE_IN_ONE.proofNodes, 1],
  ]);
  const rows = await db().bookRow.findMany({ where: { puzzleId }, orderBy: { id: 'asc' } });
  expect(rows.map((row) => row.budgets)).toEqual(['mate 7', 'mate 20000000']);
  expect(await workOf(answerId)).toBe('to-mark');
});
