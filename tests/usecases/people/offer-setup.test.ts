import { beforeEach, expect, test } from 'vitest';
import { sha256 } from '#lib/machine/hash.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { useSetupLink } from '#lib/store/setup-links.ts';
import { claimSetup } from '#lib/usecases/people/claim-setup.ts';
import { offerSetup } from '#lib/usecases/people/offer-setup.ts';
import { buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

const owner = {
  signInName: 'Mara',
  password: 'a candle in the window',
  showName: 'The Lamplight Board',
  zone: 'Europe/Vienna',
  locale: 'en' as const,
};

beforeEach(async () => {
  await db().member.deleteMany();
});

test('of two starts the link of the second makes the owner, and then none is offered', async () => {
  const first = await offerSetup();
  const second = await offerSetup();
  if (first === null || second === null) throw new Error('No link was offered.');
  expect(first).not.toBe(second);
  expect((await claimSetup({ ...owner, token: first })).ok).toBe(false);
  expect((await claimSetup({ ...owner, token: second })).ok).toBe(true);
  expect(await offerSetup()).toBeNull();
  expect((await claimSetup({ ...owner, token: second })).ok).toBe(false);
});

test('a new start voids the link of the last; a link works once; an owner ends it', async () => {
  const first = (await offerSetup()) ?? '';
  const second = (await offerSetup()) ?? '';
  const use = (token: string) => inTransaction((tx) => useSetupLink(tx, sha256(token)));
  expect(await use(first)).toBe(false);
  const uses = await Promise.all(Array.from({ length: 20 }, () => use(second)));
  expect(uses.filter(Boolean)).toHaveLength(1);
  expect(JSON.stringify(await db().setupLink.findMany())).not.toContain(second);
  await buildShow();
  expect(await offerSetup()).toBeNull();
});

test('a link ends after thirty minutes', async () => {
  const token = (await offerSetup()) ?? '';
  await db().$executeRaw`update setup_link set expires_at = clock_timestamp() where used_at is null`;
  expect(await inTransaction((tx) => useSetupLink(tx, sha256(token)))).toBe(false);
});
