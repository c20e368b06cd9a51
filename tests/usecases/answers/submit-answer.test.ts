import { describe, expect, test } from 'vitest';
import { randomToken, receiptHash } from '#lib/machine/tokens.ts';
import { db } from '#lib/store/client.ts';
import { findBrokenLog } from '#lib/store/log.ts';
import { submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { submission } from '../../support/build-answer.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function open() {
  const place = await buildShow();
  return { ...place, ...(await buildPuzzle(place)) };
}

async function sent(slug: string, text: string, more = {}) {
  const result = await submitAnswer(submission(slug, text, more));
  if (!result.ok) throw new Error(JSON.stringify(result.reason));
  return result.value;
}

describe('an answer', () => {
  test('is stored as received, to the letter, with the time of the database', async () => {
    const { slug } = await open();
    const text = '  1. Ra8#!!  \n— voilà 😀 é';
    const { answerId, token, isLate } = await sent(slug, text, { name: 'Zoë' });
    const stored = await db().answer.findUniqueOrThrow({ where: { id: answerId } });
    expect(stored.text).toBe(text);
    expect(stored.name).toBe('Zoë');
    expect(stored.receiptHash).toBe(receiptHash(token));
    expect(stored.work).toBe('to-mark');
    expect(isLate).toBe(false);
    expect(JSON.stringify(await db().answer.findMany())).not.toContain(token);
  });

  test('rings the bell once, however many arrive before a worker comes', async () => {
    const { slug, puzzleId } = await open();
    for (let number = 0; number < 5; number += 1) await sent(slug, 'Ra8');
    const bells = await db().$queryRaw<{ count: number }[]>`
      select count(*)::int as count from graphile_worker.jobs where key = ${`mark-answers:${puzzleId}`}`;
    expect(bells[0]?.count).toBe(1);
  });

  test('with control characters that the database cannot keep is stored all the same', async () => {
    const { slug } = await open();
    const { answerId } = await sent(slug, 'Ra8\0 \ud800');
    const stored = await db().answer.findUniqueOrThrow({ where: { id: answerId } });
    expect(stored.text).toBe('Ra8\ufffd \ufffd');
  });

  test('appends one line to the log, with numbers and no words of the viewer', async () => {
    const { slug } = await open();
    const { answerId } = await sent(slug, 'Ra8 from Timbuktu', { name: 'Nobody Else' });
    const entry = await db().log.findFirstOrThrow({ where: { answerId } });
    expect(entry.kind).toBe('answer-received');
    expect(JSON.stringify(entry.details)).not.toMatch(/Timbuktu|Nobody/);
    expect(await findBrokenLog(db())).toEqual([]);
  });
});

describe('the client key', () => {
  test('sent again with the same text gets the same receipt and stores nothing', async () => {
    const { slug, puzzleId } = await open();
    const clientKey = randomToken();
    const first = await sent(slug, 'Ra8', { clientKey });
    const again = await sent(slug, 'Ra8', { clientKey });
    expect(again).toEqual({ ...first, isRepeat: true });
    expect(await db().answer.count({ where: { puzzleId } })).toBe(1);
  });

  test('sent 50 times at once stores one answer and gives one receipt', async () => {
    const { slug, puzzleId } = await open();
    const one = submission(slug, 'Ra8');
    const results = await Promise.all(Array.from({ length: 50 }, () => submitAnswer(one)));
    const tokens = new Set(results.map((result) => (result.ok ? result.value.token : result.reason.code)));
    expect(tokens.size).toBe(1);
    expect(await db().answer.count({ where: { puzzleId } })).toBe(1);
    expect(results.filter((result) => result.ok && !result.value.isRepeat)).toHaveLength(1);
  });

  test('sent again with another text is refused, and the first answer stands', async () => {
    const { slug, puzzleId } = await open();
    const clientKey = randomToken();
    await sent(slug, 'Ra8', { clientKey });
    expect(await submitAnswer(submission(slug, 'Kf1', { clientKey }))).toEqual({
      ok: false,
      reason: { code: 'key-used-for-another' },
    });
    const other = await open();
    expect((await submitAnswer(submission(other.slug, 'Ra8', { clientKey }))).ok).toBe(false);
    expect((await db().answer.findMany({ where: { puzzleId } })).map((one) => one.text)).toEqual(['Ra8']);
  });
});

describe('who a solver is', () => {
  async function solverOf(answerId: number): Promise<number> {
    return (await db().answer.findUniqueOrThrow({ where: { id: answerId } })).solverId;
  }

  test('a sign-in is stronger than a receipt, a receipt than a device', async () => {
    const { slug } = await open();
    const device = randomToken();
    const signin = { issuer: 'https://example.org', subject: '7' };
    const byDevice = await sent(slug, 'Ra8', { device });
    const signed = await sent(slug, 'Ra8', { signin });
    expect(await solverOf((await sent(slug, 'Ra8', { device })).answerId)).toBe(
      await solverOf(byDevice.answerId),
    );
    const viaReceipt = await sent(slug, 'Ra8', { receipt: signed.token, device });
    expect(await solverOf(viaReceipt.answerId)).toBe(await solverOf(signed.answerId));
    const viaSignin = await sent(slug, 'Ra8', { signin, receipt: byDevice.token, device });
    expect(await solverOf(viaSignin.answerId)).toBe(await solverOf(signed.answerId));
  });

  test('a name never identifies: two Adas are two solvers', async () => {
    const { slug } = await open();
    const one = await sent(slug, 'Ra8', { name: 'Ada' });
    const other = await sent(slug, 'Ra8', { name: 'Ada' });
    expect(await solverOf(one.answerId)).not.toBe(await solverOf(other.answerId));
  });

  test('a change under a receipt is a new answer of the same solver with the same receipt', async () => {
    const { slug, puzzleId } = await open();
    const first = await sent(slug, 'Kf1');
    const changed = await sent(slug, 'Ra8', { receipt: first.token });
    expect(changed.token).toBe(first.token);
    expect(await solverOf(changed.answerId)).toBe(await solverOf(first.answerId));
    expect(await db().answer.count({ where: { puzzleId } })).toBe(2);
  });

  test('a receipt that nobody was given identifies nobody and is not taken over', async () => {
    const { slug } = await open();
    const forged = randomToken();
    const stored = await sent(slug, 'Ra8', { receipt: forged });
    expect(stored.token).not.toBe(forged);
  });
});

describe('what is refused, and what helps to mend it', () => {
  test.each([
    ['an unknown puzzle', { slug: 'nonsense' }, 'unknown-puzzle'],
    ['an empty text', { text: ' \n ' }, 'text-empty'],
    ['a text of 10,001 characters', { text: 'x'.repeat(10_001) }, 'text-too-long'],
    ['a client key that is none', { clientKey: 'short' }, 'bad-client-key'],
    ['a name with a direction sign', { name: 'a\u202eb' }, 'name'],
    ['a meant line that no reading has', { meant: ['a1a7'] }, 'meant-not-read'],
  ])('%s', async (_, more, code) => {
    const { slug } = await open();
    const result = await submitAnswer({ ...submission(slug, 'Ra8'), ...more });
    expect(result.ok ? null : result.reason.code).toBe(code);
    expect(await db().answer.count({ where: { puzzle: { slug } } })).toBe(0);
  });

  test.each([
    ['a draft', { isPublished: false }],
    ['a puzzle whose opening lies ahead', { opens: 10, closes: 20 }],
  ])('%s looks like nonsense', async (_, when) => {
    const { slug } = await buildPuzzle(await buildShow(), when);
    expect(await submitAnswer(submission(slug, 'Ra8'))).toEqual({
      ok: false,
      reason: { code: 'unknown-puzzle' },
    });
  });

  test('[P2] an answer after the close is kept and says that it is late', async () => {
    const { slug } = await buildPuzzle(await buildShow(), { closes: -1 });
    expect((await sent(slug, 'Ra8')).isLate).toBe(true);
  });

  test('an answer after the reveal is not taken', async () => {
    const { slug, puzzleId } = await buildPuzzle(await buildShow(), { closes: -1 });
    await db().puzzle.update({ where: { id: puzzleId }, data: { revealedAt: new Date() } });
    const result = await submitAnswer(submission(slug, 'Ra8'));
    expect(result.ok ? null : result.reason).toEqual({ code: 'over', state: 'revealed' });
  });
});
