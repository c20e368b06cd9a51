import { describe, expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { settleSecondLook } from '#lib/usecases/answers/settle-second-look.ts';
import { showDoubtful } from '#lib/usecases/answers/show-doubtful.ts';
import { showReceipt } from '#lib/usecases/answers/show-receipt.ts';
import { withdrawAnswer } from '#lib/usecases/answers/withdraw-answer.ts';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { buildLook, buildRevealed, lookOf } from '../../support/build-look.ts';
import { givenDatabase } from '../../support/database.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();

const STANDS = { outcome: null, points: null, reply: '', why: 'after a second look' };

test('[A2] a look waits on the list as one question of its own, and counts on the desk', async () => {
  const { puzzleId, showId, answerId } = await buildLook();
  const shown = accepted(await showDoubtful({ puzzleId, doubt: null }));
  expect(shown.waiting).toEqual([{ doubt: `look ${answerId}`, kind: 'look', answers: 1, subject: 'Cy' }]);
  expect([shown.lookAt, shown.question]).toEqual([answerId, null]);
  expect(await openDeskPuzzle(showId, puzzleId)).toMatchObject({ doubtful: 1, looks: 1 });
});

test('[A2] the mark stands: no new mark, the reply is read on the receipt, the list is empty', async () => {
  const { puzzleId, showId, answerId, memberId, token } = await buildLook();
  const reply = ' The knight takes: it is\u0020not pinned. ';
  expect(accepted(await settleSecondLook({ ...STANDS, puzzleId, answerId, memberId, reply }))).toBeNull();
  const shown = accepted(await showReceipt({ token, locale: 'en' }));
  expect(shown.look).toMatchObject({ result: 'stands', reply: 'The knight takes: it is not pinned.' });
  expect(shown.mark?.outcome).toBe('wrong');
  expect(await db().mark.count({ where: { answerId } })).toBe(1);
  expect(await openDeskPuzzle(showId, puzzleId)).toMatchObject({ doubtful: 0, looks: 0 });
  const entry = await db().log.findFirstOrThrow({ where: { kind: 'look-settled', answerId } });
  expect(entry.memberId).toBe(memberId);
  expect(entry.details).toMatchObject({ result: 'stands', mark: null });
});

test('[A2, A3] changed: overrule, settlement and standing come as one; the reply is its reason', async () => {
  const { puzzleId, answerId, memberId, token } = await buildLook();
  const word = { puzzleId, answerId, memberId, outcome: 'solved', points: null, why: 'x' } as const;
  const mark = accepted(await settleSecondLook({ ...word, reply: 'You are right.' }));
  const current = await db().mark.findFirstOrThrow({ where: { answerId, isCurrent: true } });
  expect(current).toMatchObject({
    id: mark,
    outcome: 'solved',
    points: 5,
    why: 'You are right.',
    madeBy: 'person',
  });
  const shown = accepted(await showReceipt({ token, locale: 'en' }));
  expect(shown.look).toMatchObject({ result: 'changed', reply: 'You are right.' });
  expect([shown.mark?.outcome, shown.mark?.programOutcome]).toEqual(['solved', 'wrong']);
});

test('[A2] left empty the reply stays empty, and the overrule has the reason of the door', async () => {
  const { puzzleId, answerId, memberId } = await buildLook();
  const word = { puzzleId, answerId, memberId, outcome: 'unfinished', points: 2, reply: ' ' } as const;
  accepted(await settleSecondLook({ ...word, why: 'after a second look' }));
  expect(await lookOf(answerId)).toMatchObject({ result: 'changed', reply: '' });
  const current = await db().mark.findFirstOrThrow({ where: { answerId, isCurrent: true } });
  expect([current.why, current.points]).toEqual(['after a second look', 2]);
});

describe('what is refused', () => {
  test('[A2] twice, without a look, and after the withdrawal', async () => {
    const { puzzleId, answerId, memberId, token } = await buildLook();
    const word = { ...STANDS, puzzleId, answerId, memberId };
    const both = await Promise.all([
      settleSecondLook(word),
      settleSecondLook({ ...word, outcome: 'solved' }),
    ]);
    expect(both.filter((one) => one.ok)).toHaveLength(1);
    expect(await db().log.count({ where: { kind: 'look-settled', answerId } })).toBe(1);
    const unasked = await buildRevealed();
    const { puzzleId: other, answerId: quiet } = unasked;
    expect(refused(await settleSecondLook({ ...word, puzzleId: other, answerId: quiet }))).toEqual({
      code: 'unknown-look',
    });
    const gone = await buildLook();
    await withdrawAnswer({ token: gone.token });
    const late = { ...word, puzzleId: gone.puzzleId, answerId: gone.answerId };
    expect(refused(await settleSecondLook(late)).code).toBe('unknown-look');
    expect(accepted(await showDoubtful({ puzzleId: gone.puzzleId, doubt: null })).waiting).toEqual([]);
    expect(token).not.toBe(gone.token);
  });

  test('[A8] under the number of another puzzle nothing is settled', async () => {
    const mine = await buildLook();
    const theirs = await buildLook();
    const word = { ...STANDS, puzzleId: mine.puzzleId, answerId: theirs.answerId, memberId: mine.memberId };
    expect(refused(await settleSecondLook(word)).code).toBe('unknown-look');
    expect((await lookOf(theirs.answerId))?.settledAt).toBeNull();
  });

  test('[A3] points out of range, or a reply of 501 characters, leave everything as it was', async () => {
    const { puzzleId, answerId, memberId } = await buildLook();
    const word = { ...STANDS, puzzleId, answerId, memberId };
    expect(refused(await settleSecondLook({ ...word, outcome: 'solved', points: 6 })).code).toBe('points');
    expect(refused(await settleSecondLook({ ...word, reply: 'x'.repeat(501) }))).toMatchObject({
      length: 501,
    });
    expect((await lookOf(answerId))?.settledAt).toBeNull();
    expect(await db().mark.count({ where: { answerId } })).toBe(1);
    expect(
      await db().log.count({ where: { answerId, kind: { in: ['look-settled', 'mark-overruled'] } } }),
    ).toBe(0);
  });
});

test('[A33] a withdrawal erases the host’s reply too', async () => {
  const { puzzleId, answerId, memberId, token } = await buildLook();
  accepted(await settleSecondLook({ ...STANDS, puzzleId, answerId, memberId, reply: 'Dear Quintessa' }));
  await withdrawAnswer({ token });
  expect(await lookOf(answerId)).toMatchObject({ words: '', reply: '', result: 'stands' });
});
