import { expect, test } from 'vitest';
import { claimSetup } from '#lib/usecases/people/claim-setup.ts';
import { offerSetup } from '#lib/usecases/people/offer-setup.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

const owner = {
  signInName: 'Mara',
  password: 'a candle in the window',
  showName: 'The Lamplight Board',
  zone: 'Europe/Vienna',
  locale: 'en' as const,
};

// One story in order: each step needs the one before.
test('a new start voids the former link, the new one makes the owner, and then none is offered', async () => {
  const first = await offerSetup();
  const second = await offerSetup();
  if (first === null || second === null) throw new Error('No link was offered.');
  expect(first).not.toBe(second);
  expect((await claimSetup({ ...owner, token: first })).ok).toBe(false);
  expect((await claimSetup({ ...owner, token: second })).ok).toBe(true);
  expect(await offerSetup()).toBeNull();
  expect((await claimSetup({ ...owner, token: second })).ok).toBe(false);
});
