import { describe, expect, test } from 'vitest';
import { createTree } from '#lib/book/position-tree.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { eraseAnswers } from '#lib/store/answers.ts';
import { appendBookRows, budgetsKey } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { listDoubtfulGroups } from '#lib/store/doubtful.ts';
import { lockSolver } from '#lib/store/solvers.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { settleDoubtful } from '#lib/usecases/answers/settle-doubtful.ts';
import { submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { submission } from '../../support/build-answer.ts';
import { buildPuzzle, buildShow, MATE_IN_ONE } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';
import { verifyHere } from '../../support/engine-in-process.ts';
import { accepted } from '../../support/positions.ts';
import { toRow } from '../../support/ruled-book.ts';

givenDatabase();

/** A puzzle whose book calls Kf1 unclear, with three answers that play it and one that solves. */
async function withDoubt() {
  const show = await buildShow();
  const { slug, puzzleId } = await buildPuzzle(show);
  await db().puzzle.update({ where: { id: puzzleId }, data: { engineVersion: ENGINE_VERSION } });
  const tree = createTree(MATE_IN_ONE.fen);
  const lacking = tree
    .moves(tree.root)
    .map((move) => ({ fen: MATE_IN_ONE.fen, position: tree.root.bookPosition, movesLeft: 1, move }));
  const rows = (await verifyHere({ terms: MATE_IN_ONE, lacking })).map((row) =>
    row.move === 'g1f1' ? { ...row, verdict: 'unclear' as const } : row,
  );
  await appendBookRows(db(), puzzleId, rows, budgetsKey(MATE_IN_ONE));
  for (const text of ['Kf1', '1.Kf1!', 'king f1', 'Ra8'])
    expect((await submitAnswer(submission(slug, text))).ok).toBe(true);
  await markAnswers({ puzzleId });
  return { ...show, slug, puzzleId };
}

async function outcomes(puzzleId: number) {
  const marks = await db().mark.findMany({
    where: { puzzleId, isCurrent: true },
    orderBy: { answerId: 'asc' },
  });
  return marks.map((mark) => mark.outcome);
}

describe('a group of doubtful answers', () => {
  test('[V8] one ruling on the move settles all of them, and every later answer that passes there', async () => {
    const { puzzleId, memberId, slug } = await withDoubt();
    const [group] = await listDoubtfulGroups(db(), puzzleId);
    expect(group?.answers).toBe(3);
    const word = { puzzleId, doubt: group?.doubt ?? '', memberId, why: 'it is enough' };
    const settled = await settleDoubtful({ ...word, settlement: { kind: 'verdict', verdict: 'holds' } });
    expect(settled.ok).toBe(true);
    await markAnswers({ puzzleId });
    expect(await listDoubtfulGroups(db(), puzzleId)).toEqual([]);
    expect(await outcomes(puzzleId)).not.toContain('unclear');
    await submitAnswer(submission(slug, 'Kf1, of course'));
    await markAnswers({ puzzleId });
    expect(await listDoubtfulGroups(db(), puzzleId)).toEqual([]);
    expect(await db().log.count({ where: { puzzleId, kind: 'ruling-made', memberId } })).toBe(1);
  });

  test("[A3] an outcome for the group overrules each, and the program's mark stays beside it", async () => {
    const { puzzleId, memberId } = await withDoubt();
    const [group] = await listDoubtfulGroups(db(), puzzleId);
    const settlement = { kind: 'outcome', outcome: 'solved', points: null } as const;
    const settled = await settleDoubtful({
      puzzleId,
      doubt: group?.doubt ?? '',
      memberId,
      why: 'good',
      settlement,
    });
    expect(settled).toEqual({ ok: true, value: 3 });
    expect(await outcomes(puzzleId)).toEqual(['solved', 'solved', 'solved', 'solved']);
    expect(await db().mark.count({ where: { puzzleId, madeBy: 'program', isCurrent: false } })).toBe(3);
    expect(await db().log.count({ where: { puzzleId, kind: 'mark-overruled' } })).toBe(3);
    await db().answer.updateMany({ where: { puzzleId }, data: { work: 'to-mark' } });
    await markAnswers({ puzzleId });
    expect(await outcomes(puzzleId), 'marking again leaves an overrule in force').toEqual([
      'solved',
      'solved',
      'solved',
      'solved',
    ]);
  });

  test('is refused without a reason, and where the group is empty', async () => {
    const { puzzleId, memberId } = await withDoubt();
    const settlement = { kind: 'verdict', verdict: 'slips' } as const;
    const word = { puzzleId, memberId, settlement };
    expect(await settleDoubtful({ ...word, doubt: 'x', why: ' ' })).toMatchObject({
      reason: { code: 'why-empty' },
    });
    expect(await settleDoubtful({ ...word, doubt: 'x', why: 'y' })).toMatchObject({
      reason: { code: 'group-empty' },
    });
  });
});

describe('[A3] two at once', () => {
  test('two hosts with different words: the group is settled by one of them, the other is told', async () => {
    const { puzzleId, memberId } = await withDoubt();
    const [group] = await listDoubtfulGroups(db(), puzzleId);
    const say = (outcome: 'solved' | 'wrong') =>
      settleDoubtful({
        ...{ puzzleId, doubt: group?.doubt ?? '', memberId, why: outcome },
        settlement: { kind: 'outcome', outcome, points: null },
      });
    const said = await Promise.all([say('solved'), say('wrong')]);
    expect(said.filter(({ ok }) => ok)).toEqual([{ ok: true, value: 3 }]);
    expect(said.filter(({ ok }) => !ok)).toEqual([{ ok: false, reason: { code: 'group-empty' } }]);
    expect(new Set((await outcomes(puzzleId)).slice(0, 3)).size).toBe(1);
    expect(await db().log.count({ where: { puzzleId, kind: 'mark-overruled' } })).toBe(3);
  });

  test('an answer that is withdrawn meanwhile is left out, the others are settled', async () => {
    const { puzzleId, memberId } = await withDoubt();
    const [group] = await listDoubtfulGroups(db(), puzzleId);
    const second = await db().answer.findUniqueOrThrow({ where: { id: group?.examples[1] ?? 0 } });
    let settled: ReturnType<typeof settleDoubtful> | null = null;
    await db().$transaction(async (tx) => {
      await lockSolver(tx, second.solverId);
      settled = settleDoubtful({
        ...{ puzzleId, doubt: group?.doubt ?? '', memberId, why: 'seen' },
        settlement: { kind: 'outcome', outcome: 'wrong', points: null },
      });
      await new Promise((next) => setTimeout(next, 400));
      await eraseAnswers(tx, puzzleId, second.solverId);
    });
    expect(await settled).toEqual({ ok: true, value: 2 });
  });
});

describe('[R6] two readings', () => {
  /** Two knights reach d2, and one of them wins: a strict puzzle asks which was meant. */
  async function withTwoKnights() {
    const fen = '4k3/8/8/8/8/5N2/8/RN2K2R w - - 0 1';
    const terms = {
      ...MATE_IN_ONE,
      fen,
      task: { kind: 'win' },
      isStrict: true,
      published: [],
      solverMoves: 1,
    } as const;
    const show = await buildShow();
    const { slug, puzzleId } = await buildPuzzle(show, { terms });
    const tree = createTree(fen);
    const rows = tree.moves(tree.root).map((move) => ({
      ...toRow(
        { position: tree.root.bookPosition, movesLeft: null, move },
        { verdict: move === 'b1d2' ? 'holds' : 'slips' },
      ),
      engineVersion: ENGINE_VERSION,
    }));
    await appendBookRows(db(), puzzleId, rows, budgetsKey(terms));
    const send = async (...texts: string[]) => {
      for (const text of texts) expect((await submitAnswer(submission(slug, text))).ok).toBe(true);
      await markAnswers({ puzzleId });
    };
    return { ...show, puzzleId, send };
  }

  test('[R6] one ruling settles the pair for everybody, whatever the words, and for later answers', async () => {
    const { puzzleId, memberId, send } = await withTwoKnights();
    await send('Nd2', '1.Nd2! and it is over', 'Kf1', 'knight to d2');
    expect(await outcomes(puzzleId)).toEqual(['ambiguous', 'ambiguous', 'wrong', 'ambiguous']);
    const [group, ...more] = await listDoubtfulGroups(db(), puzzleId);
    expect([group?.answers, more]).toEqual([3, []]);
    const word = { puzzleId, doubt: group?.doubt ?? '', memberId, why: 'only that one comes to mind' };
    const settled = await settleDoubtful({ ...word, settlement: { kind: 'reading', meant: ['b1d2'] } });
    expect(settled).toEqual({ ok: true, value: 3 });
    await send('Nd2 of course', 'Nfd2');
    expect(await outcomes(puzzleId)).toEqual(['solved', 'solved', 'wrong', 'solved', 'solved', 'wrong']);
    expect(await listDoubtfulGroups(db(), puzzleId)).toEqual([]);
    expect(await db().ruling.count({ where: { puzzleId } })).toBe(1);
  });

  test('[R6] another line that the host types is what that text meant, and that text alone', async () => {
    const { puzzleId, memberId, send } = await withTwoKnights();
    await send('Nd2', 'Nd2!');
    const [group] = await listDoubtfulGroups(db(), puzzleId);
    const word = { puzzleId, doubt: group?.doubt ?? '', memberId, why: 'told me on the phone' };
    accepted(await settleDoubtful({ ...word, settlement: { kind: 'reading', meant: ['h1h8'] } }));
    await markAnswers({ puzzleId });
    expect(await outcomes(puzzleId)).toEqual(['wrong', 'ambiguous']);
  });
});
