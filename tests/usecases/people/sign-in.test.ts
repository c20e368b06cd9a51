import { afterAll, describe, expect, test } from 'vitest';
import { hashPassword } from '#lib/machine/passwords.ts';
import { db } from '#lib/store/client.ts';
import { closeRateLimits } from '#lib/store/rate-limits.ts';
import { sessionSecret, signIn } from '#lib/usecases/people/sign-in.ts';
import { buildShow } from '../../support/build-show.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();
afterAll(closeRateLimits);

async function member(signInName: string): Promise<number> {
  const { showId } = await buildShow();
  const passwordHash = await hashPassword('a candle in the window');
  return (await db().member.create({ data: { showId, signInName, passwordHash, role: 'helper' } })).id;
}

let callers = 0;
async function codeOf(name: string, password: string, from?: string): Promise<string | number> {
  callers += 1;
  const signedIn = await signIn({ name, password, address: from ?? `10.0.0.${callers}` });
  return signedIn.ok ? signedIn.value : signedIn.reason.code;
}

describe('[A13] signing in', () => {
  test('[A13] name in any case, password to the letter', async () => {
    const id = await member('ilse');
    expect(await codeOf(' Ilse ', 'a candle in the window')).toBe(id);
    expect(await codeOf('ilse', 'A candle in the window')).toBe('wrong-name-or-password');
  });

  test('[A13] unknown names, ill-formed names and removed members get the same reason', async () => {
    const id = await member('gone');
    await db().$executeRaw`update member set removed_at = clock_timestamp() where id = ${id}`;
    for (const name of ['nobody', '', "'; drop table member; --", 'x'.repeat(5000), 'gone']) {
      expect(await codeOf(name, 'a candle in the window')).toBe('wrong-name-or-password');
    }
  });

  test('[A13] ten failures for one name close it for a while, from whatever address, and the right password too', async () => {
    await member('target');
    for (let tries = 0; tries < 10; tries += 1)
      expect(await codeOf('target', 'guess after guess')).toBe('wrong-name-or-password');
    expect(await codeOf('target', 'a candle in the window')).toBe('too-many-tries');
    const other = await member('bystander');
    expect(await codeOf('bystander', 'a candle in the window')).toBe(other);
  });

  test('[A13] a success gives the turns of the name back', async () => {
    const id = await member('forgetful');
    for (let round = 0; round < 2; round += 1) {
      for (let tries = 0; tries < 8; tries += 1) await codeOf('forgetful', 'guess after guess');
      expect(await codeOf('forgetful', 'a candle in the window')).toBe(id);
    }
  });

  test('[A13] neither name nor address stands in the limits in clear', async () => {
    await codeOf('visible', 'guess after guess', '203.0.113.77');
    const rows = await db().rateLimit.findMany();
    expect(rows.length).toBeGreaterThan(0);
    expect(JSON.stringify(rows.map((row) => row.key))).not.toMatch(/visible|203\.0\.113/);
  });

  test('[A11] the key of the sessions is a secret of this installation alone', () => {
    expect(sessionSecret()).toMatch(/^[0-9a-f]{64}$/);
  });
});
