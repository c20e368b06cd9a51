import { expect, test } from 'vitest';
import { sha256 } from '#lib/machine/hash.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { useSetupLink } from '#lib/store/setup-links.ts';
import { offerSetup } from '#lib/usecases/people/offer-setup.ts';
import { buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

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
  await db().member.deleteMany();
  const token = (await offerSetup()) ?? '';
  await db().$executeRaw`update setup_link set expires_at = clock_timestamp() where used_at is null`;
  expect(await inTransaction((tx) => useSetupLink(tx, sha256(token)))).toBe(false);
});
