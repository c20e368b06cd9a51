import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { admitMember } from '#lib/usecases/people/admit-member.ts';
import { buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

async function codeOf(
  memberId: number | null,
  deed: Parameters<typeof admitMember>[1] = 'look-at-desk',
): Promise<string> {
  const admitted = await admitMember(memberId, deed);
  return admitted.ok ? `${admitted.value.role} of ${admitted.value.showName}` : admitted.reason.code;
}

test('[A7] without a session, or with a number of nobody, there is no way in', async () => {
  expect(await codeOf(null)).toBe('not-signed-in');
  expect(await codeOf(987_654)).toBe('not-signed-in');
});

test('[A7] the role is loaded at each request and decides about each deed', async () => {
  const { memberId } = await buildShow();
  expect(await codeOf(memberId, 'reveal-puzzle')).toBe('owner of The Test Board');
  await db().member.update({ where: { id: memberId }, data: { role: 'helper' } });
  expect(await codeOf(memberId, 'reveal-puzzle')).toBe('no-right');
  expect(await codeOf(memberId, 'settle-doubtful')).toBe('helper of The Test Board');
});

test('[A11] rights taken away are gone at the next request', async () => {
  const { memberId } = await buildShow();
  expect(await codeOf(memberId)).toBe('owner of The Test Board');
  await db().$executeRaw`update member set removed_at = clock_timestamp() where id = ${memberId}`;
  expect(await codeOf(memberId)).toBe('not-signed-in');
});
