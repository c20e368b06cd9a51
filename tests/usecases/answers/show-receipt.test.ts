import { beforeAll, describe, expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { showReceipt } from '#lib/usecases/answers/show-receipt.ts';
import { withdrawAnswer } from '#lib/usecases/answers/withdraw-answer.ts';
import { buildHealey, markEverything, revealNow, send } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();

const show = async (token: string) => accepted(await showReceipt({ token, locale: 'en' }));
let puzzle: Awaited<ReturnType<typeof buildHealey>>;
const tokens = { right: '', wrong: '', slip: '', gone: '', first: '' };

beforeAll(async () => {
  puzzle = await buildHealey();
  tokens.right = (await send(puzzle.slug, '1.Rh1 Bd7 2.Qb1', { name: 'Ilse Varga' })).token;
  tokens.wrong = (await send(puzzle.slug, '1.Qb1 Nd8', { name: 'rook_77' })).token;
  tokens.slip = (await send(puzzle.slug, '1.Rh1 Bd7 2.Qd6+')).token;
  tokens.gone = (await send(puzzle.slug, '1.Rh1', { name: 'Gone' })).token;
  const device = 'AAAAAAAAAAAAAAAAAAAAAA';
  tokens.first = (await send(puzzle.slug, '1.Rh1', { device })).token;
  await send(puzzle.slug, '1.Rh1 Bd7 2.Qb1', { device });
  await markEverything(puzzle.puzzleId, puzzle.terms);
});

describe('before the reveal', () => {
  test('[T2] a receipt shows text, time and reading, and no mark, although the answer is marked', async () => {
    expect(await db().mark.count()).toBeGreaterThan(4);
    const shown = await show(tokens.right);
    expect(shown.text).toBe('1.Rh1 Bd7 2.Qb1');
    expect(shown.name).toBe('Ilse Varga');
    expect(shown.read.readings[0]?.line.map((move) => move.uci)).toEqual(['d1h1', 'b5d7', 'g6b1']);
    expect(shown.mark).toBeNull();
    expect(shown.isLate).toBe(false);
  });

  test('[T2] the receipts of a solver and of a loser have the same form', async () => {
    const [right, wrong] = [await show(tokens.right), await show(tokens.wrong)];
    expect(Object.keys(wrong)).toEqual(Object.keys(right));
    expect({ ...wrong, text: '', name: '', read: null, receivedAt: null, now: null }).toEqual({
      ...right,
      text: '',
      name: '',
      read: null,
      receivedAt: null,
      now: null,
    });
  });

  test('[P2] an earlier answer of the same person says that a later one takes its place', async () => {
    expect((await show(tokens.first)).isReplaced).toBe(true);
    expect((await show(tokens.right)).isReplaced).toBe(false);
  });

  test('a withdrawn answer has neither text nor name left', async () => {
    accepted(await withdrawAnswer({ token: tokens.gone }));
    expect(await show(tokens.gone)).toMatchObject({ isWithdrawn: true, text: '', name: null });
  });

  test('an unknown token and an ill-formed one look alike', async () => {
    const unknown = refused(await showReceipt({ token: 'AAAAAAAAAAAAAAAAAAAAAB', locale: 'en' }));
    expect(refused(await showReceipt({ token: 'x', locale: 'en' }))).toEqual(unknown);
  });
});

describe('after the reveal', () => {
  beforeAll(() => revealNow(puzzle.puzzleId));

  test('[A1] the mark carries points, reason and the verdict on every move', async () => {
    const { mark } = await show(tokens.slip);
    expect(mark).toMatchObject({ outcome: 'slipped', atMove: 2, points: 2, mostPoints: 5 });
    expect(mark?.explanation.length).toBeGreaterThan(20);
    expect(mark?.ledger.rows.map((row) => row.verdict)).toEqual(['holds', null, 'slips']);
  });

  test('[O] a solved answer says so', async () => {
    expect((await show(tokens.right)).mark).toMatchObject({
      outcome: 'solved',
      points: 5,
      standing: 'counted',
    });
  });

  test('[P2] the replaced one says that it does not count', async () => {
    expect((await show(tokens.first)).mark?.standing).toBe('replaced');
  });
});
