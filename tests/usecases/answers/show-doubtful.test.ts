import { describe, expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { settleDoubtful } from '#lib/usecases/answers/settle-doubtful.ts';
import { settleTurned } from '#lib/usecases/answers/settle-turned.ts';
import { showDoubtful } from '#lib/usecases/answers/show-doubtful.ts';
import { undoSettlement } from '#lib/usecases/answers/undo-settlement.ts';
import { buildShow } from '../../support/build-show.ts';
import { buildHealey, markEverything, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function marked(...texts: string[]) {
  const { memberId, ...place } = await buildShow();
  const puzzle = { memberId, ...(await buildHealey({ place })) };
  for (const text of texts) await send(puzzle.slug, text);
  await markEverything(puzzle.puzzleId, puzzle.terms);
  return puzzle;
}

async function outcomes(puzzleId: number): Promise<string[]> {
  const rows = await db().mark.findMany({
    where: { puzzleId, isCurrent: true },
    orderBy: { answerId: 'asc' },
  });
  return rows.map((row) => row.outcome);
}

async function view(puzzleId: number, doubt: string | null = null) {
  const shown = await showDoubtful({ puzzleId, doubt });
  if (!shown.ok) throw new Error(shown.reason.code);
  return shown.value;
}

// Rd1-b1 written from Black's side is Re8-g8; no man of White's can go to g8.
const TURNED = 'Rg8';

describe('[R14] board turned round', () => {
  test('[R14] all such texts are one question, with the turned line and as written as its answers', async () => {
    const { puzzleId } = await marked(TURNED, 'I think Rg8!', '1.Rh1');
    const { question, waiting } = await view(puzzleId);
    expect(waiting.map((group) => [group.kind, group.answers])).toEqual([['turned', 2]]);
    expect(question?.text).toBe(TURNED);
    expect(question?.candidates.map((one) => [one.id, one.line?.map((move) => move.uci) ?? null])).toEqual([
      ['turned', ['d1b1']],
      ['outcome impossible', null],
    ]);
    expect(question?.candidates[0]?.outcome).not.toBeNull();
  });

  test('[R14] one ruling settles them all; taken back, they return to the list', async () => {
    const { puzzleId, memberId, terms } = await marked(TURNED, 'I think Rg8!');
    expect(await outcomes(puzzleId)).toEqual(['unreadable', 'unreadable']);
    const settled = await settleTurned({ puzzleId, memberId, why: 'at answer 1' });
    expect(settled).toEqual({ ok: true, value: 2 });
    await markEverything(puzzleId, terms);
    const ruled = await outcomes(puzzleId);
    expect(ruled[0]).toBe(ruled[1]);
    expect(ruled[0]).not.toBe('unreadable');
    expect((await view(puzzleId)).waiting).toEqual([]);
    expect(await undoSettlement({ puzzleId, memberId, why: 'at answer 1' })).toMatchObject({ ok: true });
    await markEverything(puzzleId, terms);
    expect(await outcomes(puzzleId)).toEqual(['unreadable', 'unreadable']);
    expect((await view(puzzleId)).waiting).toHaveLength(1);
  });

  test('[R14] what was settled last is not asked again while its answers wait to be marked', async () => {
    const { puzzleId } = await marked(TURNED);
    const shown = await showDoubtful({ puzzleId, doubt: null, settled: 'turned' });
    expect(shown).toMatchObject({ ok: true, value: { question: null, waiting: [{ doubt: 'turned' }] } });
  });

  test('[R14] with no such text there is nothing to rule on', async () => {
    const { puzzleId, memberId } = await marked('1.Rh1');
    expect(await settleTurned({ puzzleId, memberId, why: 'x' })).toEqual({
      ok: false,
      reason: { code: 'group-empty' },
    });
    expect(await settleTurned({ puzzleId: 999_999, memberId, why: 'x' })).toEqual({
      ok: false,
      reason: { code: 'unknown-puzzle' },
    });
  });
});

describe('[A3] settling by outcome', () => {
  const UNREAD = 'Nxx5+';

  test('[A3] what could not be read is shown, settled by one word, and the word can be taken back', async () => {
    const { puzzleId, memberId, terms } = await marked(UNREAD);
    const { question } = await view(puzzleId);
    expect(question?.candidates.map((one) => one.id)).toEqual(['outcome unreadable', 'outcome chatter']);
    const settlement = { kind: 'outcome', outcome: 'chatter', points: null } as const;
    const word = { puzzleId, memberId, why: 'at answer 9', settlement, doubt: question?.doubt ?? '' };
    expect(await settleDoubtful(word)).toEqual({ ok: true, value: 1 });
    expect(await outcomes(puzzleId)).toEqual(['chatter']);
    expect((await view(puzzleId)).question).toBeNull();
    expect(await undoSettlement({ puzzleId, memberId: memberId + 1, why: 'at answer 9' })).toEqual({
      ok: false,
      reason: { code: 'nothing-to-undo' },
    });
    expect(await undoSettlement({ puzzleId, memberId, why: 'at answer 9' })).toMatchObject({ ok: true });
    await markEverything(puzzleId, terms);
    expect(await outcomes(puzzleId)).toEqual(['unreadable']);
    expect(await db().log.count({ where: { kind: 'settlement-undone', puzzleId } })).toBe(1);
  });

  test('[A3] a line typed by the host is what the text meant from then on', async () => {
    const { puzzleId, memberId, terms } = await marked(UNREAD);
    const { question } = await view(puzzleId);
    const settlement = { kind: 'reading', meant: ['d1h1', 'b5d7', 'g6b1'] } as const;
    await settleDoubtful({
      puzzleId,
      memberId,
      why: 'clear to anybody',
      settlement,
      doubt: question?.doubt ?? '',
    });
    await markEverything(puzzleId, terms);
    expect(await outcomes(puzzleId)).toEqual(['solved']);
  });
});

test('[A8] a puzzle that is none has no list', async () => {
  expect(await showDoubtful({ puzzleId: 999_999, doubt: null })).toEqual({
    ok: false,
    reason: { code: 'unknown-puzzle' },
  });
});
