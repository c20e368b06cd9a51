import { beforeAll, expect, test } from 'vitest';
import { isToken } from '#lib/machine/tokens.ts';
import { db } from '#lib/store/client.ts';
import { readBack } from '#lib/usecases/answers/read-back.ts';
import { buildPuzzle, buildShow } from '../../support/build-show.ts';
import { HEALEY } from '../../support/build-solution.ts';
import { givenDatabase } from '../../support/database.ts';
import { accepted, refused } from '../../support/positions.ts';

givenDatabase();
let here = '';
let draft = '';

beforeAll(async () => {
  const show = await buildShow();
  here = (await buildPuzzle(show)).slug;
  await buildPuzzle(show, { terms: HEALEY });
  draft = (await buildPuzzle(show, { isPublished: false })).slug;
});

const read = async (text: string) => accepted(await readBack({ slug: here, text, locale: 'en' }));

test('[R8] reads a text and stores nothing', async () => {
  const { read: found, clientKey } = await read('Ra8 mate');
  expect(found.readings[0]?.line.map((move) => move.uci)).toEqual(['a1a8']);
  expect(isToken(clientKey)).toBe(true);
  expect(await db().answer.count()).toBe(0);
});

test('every reading back gives a fresh key', async () => {
  expect((await read('Ra8')).clientKey).not.toBe((await read('Ra8')).clientKey);
});

test('[R15] a text that is a full line at another recent puzzle is offered there', async () => {
  const { elsewhere } = await read('1.Rh1 Bd7 2.Qb1');
  expect(elsewhere?.title).toBe('A test puzzle');
  expect((await read('Ra8')).elsewhere).toBeNull();
});

test('[T2] a draft is as unknown as nonsense', async () => {
  const nonsense = refused(await readBack({ slug: 'nonsense', text: 'Ra8', locale: 'en' }));
  expect(refused(await readBack({ slug: draft, text: 'Ra8', locale: 'en' }))).toEqual(nonsense);
});
