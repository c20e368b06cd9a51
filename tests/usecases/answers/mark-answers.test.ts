import { describe, expect, test } from 'vitest';
import { createTree } from '#lib/book/position-tree.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { appendBookRows, budgetsKey } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { findBrokenLog } from '#lib/store/log.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { withdrawAnswer } from '#lib/usecases/answers/withdraw-answer.ts';
import { extendBook } from '#lib/usecases/puzzles/extend-book.ts';
import { submission } from '../../support/build-answer.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';

givenDatabase();

async function open(terms: PuzzleTerms = MATE_IN_ONE, when = {}) {
  const built = await buildPuzzle(await buildShow(), { terms, ...when });
  await db().puzzle.update({ where: { id: built.puzzleId }, data: { engineVersion: ENGINE_VERSION } });
  return built;
}

async function sent(slug: string, text: string, more = {}) {
  const result = await submitAnswer(submission(slug, text, more));
  if (!result.ok) throw new Error(JSON.stringify(result.reason));
  return result.value;
}

/** Marks until nothing is left to do, as worker and bells would. */
async function markAll(puzzleId: number): Promise<void> {
  for (let round = 0; round < 20; round += 1) {
    const { lacking } = await markAnswers({ puzzleId });
    if (lacking === 0) return;
    await extendBook({ puzzleId, verify: verifyHere });
  }
  throw new Error('Marking does not come to an end.');
}

function currentMark(answerId: number) {
  return db().mark.findFirstOrThrow({ where: { answerId, isCurrent: true } });
}

function answer(id: number) {
  return db().answer.findUniqueOrThrow({ where: { id } });
}

describe('marking', () => {
  test('marks what waits; positions that nobody foresaw join the book', async () => {
    const { slug, puzzleId } = await open();
    const right = await sent(slug, 'Ra8#');
    const wrong = await sent(slug, 'Kf1');
    const chatter = await sent(slug, 'hello from Oslo');
    expect(await db().bookRow.count({ where: { puzzleId } })).toBe(0);
    await markAll(puzzleId);
    expect((await currentMark(right.answerId)).outcome).toBe('solved');
    expect((await currentMark(right.answerId)).points).toBe(5);
    expect((await currentMark(wrong.answerId)).outcome).toBe('wrong');
    expect((await currentMark(chatter.answerId)).outcome).toBe('chatter');
    expect(await db().bookRow.count({ where: { puzzleId } })).toBeGreaterThan(0);
    expect(await db().want.count({ where: { puzzleId } })).toBe(0);
    expect(await findBrokenLog(db())).toEqual([]);
  });

  test('[P2] the last answer in time counts, the former is kept and says that it was replaced', async () => {
    const { slug, puzzleId } = await open();
    const first = await sent(slug, 'Ra8#');
    const second = await sent(slug, 'Kf1', { receipt: first.token });
    await markAll(puzzleId);
    expect((await answer(first.answerId)).standing).toBe('replaced');
    expect((await answer(second.answerId)).standing).toBe('counted');
  });

  test('[P2] the first counts where the host says so', async () => {
    const { slug, puzzleId } = await open();
    await db().puzzle.update({ where: { id: puzzleId }, data: { countsFirst: true } });
    const first = await sent(slug, 'Ra8#');
    const second = await sent(slug, 'Kf1', { receipt: first.token });
    await markAll(puzzleId);
    expect((await answer(first.answerId)).standing).toBe('counted');
    expect((await answer(second.answerId)).standing).toBe('replaced');
  });

  test('[P4] chatter never replaces an answer', async () => {
    const { slug, puzzleId } = await open();
    const first = await sent(slug, 'Ra8#');
    const thanks = await sent(slug, 'thank you for the show!', { receipt: first.token });
    await markAll(puzzleId);
    expect((await answer(first.answerId)).standing).toBe('counted');
    expect((await answer(thanks.answerId)).standing).toBe('no-answer');
  });

  test('[P2] a late answer is marked and does not count', async () => {
    const { slug, puzzleId } = await open(MATE_IN_ONE, { closes: -1 });
    const late = await sent(slug, 'Ra8#');
    await markAll(puzzleId);
    expect((await answer(late.answerId)).standing).toBe('late');
    expect((await currentMark(late.answerId)).flags).toContain('late');
  });

  test('a withdrawn answer is neither marked nor counted, whichever came first', async () => {
    const { slug, puzzleId } = await open();
    const before = await sent(slug, 'Ra8#');
    await withdrawAnswer({ token: before.token });
    const after = await sent(slug, 'Ra8#');
    await markAll(puzzleId);
    await withdrawAnswer({ token: after.token });
    expect(await db().mark.count({ where: { answerId: before.answerId } })).toBe(0);
    expect((await answer(after.answerId)).standing).toBe('withdrawn');
    await markAll(puzzleId);
    expect(await db().answer.count({ where: { puzzleId, standing: 'counted' } })).toBe(0);
  });

  test('marking again supersedes, keeps the former mark with its successor, and logs the change', async () => {
    const { slug, puzzleId } = await open();
    const { answerId } = await sent(slug, 'Ra8#');
    await markAll(puzzleId);
    const first = await currentMark(answerId);
    await db().answer.update({ where: { id: answerId }, data: { work: 'to-mark' } });
    await markAll(puzzleId);
    const second = await currentMark(answerId);
    expect(second.id).not.toBe(first.id);
    const former = await db().mark.findUniqueOrThrow({ where: { id: first.id } });
    expect([former.isCurrent, former.supersededById]).toEqual([false, second.id]);
    const entries = await db().log.findMany({
      where: { puzzleId, kind: 'answers-marked' },
      orderBy: { id: 'asc' },
    });
    expect(entries.at(-1)?.details).toEqual({
      marked: 1,
      changed: [{ answer: answerId, from: first.id, to: second.id }],
    });
  });

  test('a quotation that would end in the middle of a sign holds up neither its answer nor its neighbours', async () => {
    const { slug, puzzleId } = await open();
    // No move, 42 units long: the 40th is the first half of a letter outside the basic plane.
    const odd = await sent(slug, `Q${'\u0301'.repeat(38)}𝐡𝟗`);
    const right = await sent(slug, 'Ra8#');
    await markAll(puzzleId);
    expect((await currentMark(right.answerId)).outcome).toBe('solved');
    const mark = await currentMark(odd.answerId);
    expect([mark.outcome, mark.reason]).toMatchObject([
      'impossible',
      { params: { text: `Q${'\u0301'.repeat(38)}` } },
    ]);
  });

  test('[F11] an answer whose mark the database refuses is alone after two tries, and set aside after three', async () => {
    const { slug, puzzleId } = await open();
    await extendWhole(puzzleId);
    const ids: number[] = [];
    for (const text of ['Ra8#', 'Kf1', 'Ra8#']) ids.push((await sent(slug, text)).answerId);
    await db().$executeRaw`
      create function refuse_wrong() returns trigger language plpgsql as
      $$ begin raise exception 'refused' using errcode = '22P02'; end $$`;
    await db().$executeRaw`
      create trigger refuse_wrong before insert on mark for each row when (new.outcome = 'wrong')
      execute function refuse_wrong()`;
    const failures: number[] = [];
    for (let run = 1; run <= 6; run += 1) await markAnswers({ puzzleId }).catch(() => failures.push(run));
    await db().$executeRaw`drop trigger refuse_wrong on mark`;
    expect(failures).toEqual([1, 2, 3]);
    const after = await Promise.all(
      ids.map(async (id) => [(await answer(id)).work, (await currentMark(id)).outcome]),
    );
    expect(after).toEqual([
      ['done', 'solved'],
      ['parked', 'unclear'],
      ['done', 'solved'],
    ]);
  });

  test('[F11] answers that were begun before are not kept waiting by those that keep coming in', async () => {
    const { slug, puzzleId } = await open();
    await extendWhole(puzzleId);
    const begun = await sent(slug, 'Ra8#');
    await db().answer.update({ where: { id: begun.answerId }, data: { tries: 1 } });
    for (let number = 0; number < 2; number += 1) await sent(slug, 'Kf1');
    // Whenever a mark is written another answer is there.
    await db().$executeRaw`
      create function send_more() returns trigger language plpgsql as $$ begin
        if (select count(*) from answer where puzzle_id = new.puzzle_id) < 60 then
          insert into answer (puzzle_id, solver_id, text, channel, client_key)
          values (new.puzzle_id, new.solver_id, 'Kf1', 'page', 'more' || new.id);
        end if;
        return null;
      end $$`;
    await db().$executeRaw`
      create trigger send_more after insert on mark for each row execute function send_more()`;
    await markAnswers({ puzzleId });
    await db().$executeRaw`drop trigger send_more on mark`;
    const marks = await db().mark.findMany({ where: { puzzleId }, orderBy: { id: 'asc' } });
    const place = marks.findIndex((mark) => mark.answerId === begun.answerId);
    expect(marks.length).toBe(60);
    expect(place).toBeLessThan(30);
  });

  test('[F11] a database that is busy is no answer’s fault: no try is counted', async () => {
    const { slug, puzzleId } = await open();
    const { answerId } = await sent(slug, 'Ra8#');
    await extendWhole(puzzleId);
    await db().$transaction(
      async (other) => {
        await other.$executeRaw`lock table mark in exclusive mode`;
        await expect(markAnswers({ puzzleId })).rejects.toThrow();
      },
      { timeout: 30_000 },
    );
    expect((await answer(answerId)).tries).toBe(0);
    await markAnswers({ puzzleId });
    expect((await currentMark(answerId)).outcome).toBe('solved');
  });

  test('two workers at once mark every answer once', async () => {
    const { slug, puzzleId } = await open();
    for (let number = 0; number < 30; number += 1) await sent(slug, number % 2 === 0 ? 'Ra8#' : 'Kf1');
    await extendWhole(puzzleId);
    await Promise.all([markAnswers({ puzzleId }), markAnswers({ puzzleId }), markAnswers({ puzzleId })]);
    expect(await db().mark.count({ where: { puzzleId } })).toBe(30);
    expect(await db().answer.count({ where: { puzzleId, work: 'done', standing: 'counted' } })).toBe(30);
  });
});

/** Fills the book with every first move. */
async function extendWhole(puzzleId: number): Promise<void> {
  const root = createTree(MATE_IN_ONE.fen).root;
  const tree = createTree(MATE_IN_ONE.fen);
  const lacking = tree
    .moves(root)
    .map((move) => ({ fen: MATE_IN_ONE.fen, position: root.bookPosition, movesLeft: 1, move }));
  const rows = await verifyHere({ terms: MATE_IN_ONE, lacking });
  await appendBookRows(db(), puzzleId, rows, budgetsKey(MATE_IN_ONE));
}
