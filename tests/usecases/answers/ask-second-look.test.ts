import { expect, test } from 'vitest';
import { randomToken } from '#lib/machine/tokens.ts';
import { db } from '#lib/store/client.ts';
import { askSecondLook } from '#lib/usecases/answers/ask-second-look.ts';
import { showReceipt } from '#lib/usecases/answers/show-receipt.ts';
import { withdrawAnswer } from '#lib/usecases/answers/withdraw-answer.ts';
import { buildLook, buildRevealed, lookOf } from '../../support/build-look.ts';
import { buildHealey, markEverything, revealNow, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();

async function codeOf(token: string, words = ''): Promise<string | null> {
  const asked = await askSecondLook({ token, words });
  return asked.ok ? null : asked.reason.code;
}

test('[A2] asked once after the reveal; the receipt shows the words and that it waits; the log holds numbers alone', async () => {
  const { token, answerId } = await buildRevealed();
  expect(await codeOf(token, '  Zoe\u0308 says: the knight is pinned \0 ')).toBeNull();
  const look = await lookOf(answerId);
  expect(look).toMatchObject({ words: 'Zoë says: the knight is pinned \ufffd', result: null, reply: null });
  const shown = accepted(await showReceipt({ token, locale: 'en' }));
  expect(shown.look).toMatchObject({ words: look?.words, result: null, settledAt: null });
  const entry = await db().log.findFirstOrThrow({ where: { kind: 'look-asked', answerId } });
  expect(entry.details).toEqual({ look: look?.id, characters: 32 });
  expect(await codeOf(token, 'and once more')).toBe('asked-already');
  expect((await lookOf(answerId))?.words).toBe(look?.words);
});

test('[A2] 20 at once make one look, whatever arrives first', async () => {
  const { token, answerId } = await buildRevealed();
  const codes = await Promise.all(Array.from({ length: 20 }, (_, i) => codeOf(token, `try ${i}`)));
  expect(codes.filter((code) => code === null)).toHaveLength(1);
  expect(codes.filter((code) => code === 'asked-already')).toHaveLength(19);
  expect(await db().secondLook.count({ where: { answerId } })).toBe(1);
  expect(await db().log.count({ where: { kind: 'look-asked', answerId } })).toBe(1);
});

test('[T2] before the reveal a solver, a loser and one without a mark are told the same', async () => {
  const { slug, puzzleId, terms } = await buildHealey();
  const tokens: string[] = [];
  for (const text of ['1.Rh1', '1.Qd6+', 'thank you']) tokens.push((await send(slug, text)).token);
  await markEverything(puzzleId, terms);
  tokens.push((await send(slug, '1.Rh1')).token);
  for (const token of tokens)
    expect(refused(await askSecondLook({ token, words: 'x'.repeat(501) }))).toEqual({
      code: 'before-reveal',
    });
  expect(await db().secondLook.count({ where: { puzzleId } })).toBe(0);
  await revealNow(puzzleId);
  expect(await codeOf(tokens[0] ?? '')).toBeNull();
  expect(await codeOf(tokens[3] ?? ''), 'the last one has no mark yet').toBe('not-marked');
});

test('[A2] words of 501 characters are refused with both numbers, and the one look is not spent', async () => {
  const { token, answerId } = await buildRevealed();
  expect(refused(await askSecondLook({ token, words: 'x'.repeat(501) }))).toEqual({
    code: 'too-long',
    length: 501,
    most: 500,
  });
  expect(await lookOf(answerId)).toBeNull();
  expect(await codeOf(token, 'x'.repeat(500))).toBeNull();
});

test('[A10] an unknown receipt and nonsense look alike; a withdrawn answer has no look', async () => {
  expect(await codeOf(randomToken())).toBe('unknown-receipt');
  expect(await codeOf('nonsense')).toBe('unknown-receipt');
  const { token } = await buildRevealed();
  await withdrawAnswer({ token });
  expect(await codeOf(token)).toBe('withdrawn');
});

test('[A33] withdrawing erases the words, and asking at the same moment leaves none behind', async () => {
  const { token, answerId } = await buildLook('Signed, Quintessa');
  accepted(await withdrawAnswer({ token }));
  expect(await lookOf(answerId)).toMatchObject({ words: '', settledAt: null });
  for (let round = 0; round < 5; round += 1) {
    const other = await buildRevealed();
    await Promise.all([
      askSecondLook({ token: other.token, words: 'Quintessa again' }),
      withdrawAnswer({ token: other.token }),
    ]);
    expect((await lookOf(other.answerId))?.words ?? '').toBe('');
  }
  const everything = JSON.stringify([await db().secondLook.findMany(), await db().log.findMany()]);
  expect(everything).not.toContain('Quintessa');
});
