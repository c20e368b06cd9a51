import { describe, expect, test } from 'vitest';
import { sha256 } from '#lib/machine/hash.ts';
import { randomToken } from '#lib/machine/tokens.ts';
import { db } from '#lib/store/client.ts';
import { createSampleSeason } from '#lib/store/samples.ts';
import { renewSetupLink } from '#lib/store/setup-links.ts';
import { claimSetup } from '#lib/usecases/people/claim-setup.ts';
import { givenDatabase } from '../../support/database.ts';

givenDatabase();

const owner = {
  signInName: 'Mara',
  password: 'a candle in the window',
  showName: 'The Lamplight Board',
  zone: 'Europe/Vienna',
  locale: 'en' as const,
};

async function link(): Promise<string> {
  const token = randomToken();
  await renewSetupLink(db(), sha256(token));
  return token;
}

async function codeOf(claim: Parameters<typeof claimSetup>[0]): Promise<string> {
  const claimed = await claimSetup(claim);
  return claimed.ok ? 'ok' : claimed.reason.code;
}

describe('[A14] the setup link', () => {
  test('[A14] a bad name or password is refused and does not use the link up', async () => {
    const token = await link();
    expect(await codeOf({ ...owner, token, signInName: 'x' })).toBe('bad-sign-in-name');
    expect(await codeOf({ ...owner, token, password: 'short' })).toBe('password-too-short');
    expect(await codeOf({ ...owner, token, zone: 'Moon/Base' })).toBe('bad-zone');
    expect(await codeOf({ ...owner, token, showName: '\u202e' })).toBe('bad-show-name');
    expect(await db().setupLink.count({ where: { usedAt: null, voidedAt: null } })).toBe(1);
  });

  test('[A14] unknown, ill-formed, ended and voided codes look alike', async () => {
    const voided = await link();
    const ended = await link();
    await db()
      .$executeRaw`update setup_link set expires_at = clock_timestamp() where token_hash = ${sha256(ended)}`;
    for (const token of [randomToken(), 'x', '', voided, ended]) {
      expect(await codeOf({ ...owner, token })).toBe('link-not-valid');
    }
    expect(await db().member.count()).toBe(0);
  });

  test('[A14] of 20 claims at once exactly one succeeds, and one show with one owner is there', async () => {
    const token = await link();
    const claims = Array.from({ length: 20 }, (_, place) =>
      codeOf({ ...owner, token, signInName: `mara${place}` }),
    );
    const codes = await Promise.all(claims);
    expect(codes.filter((code) => code === 'ok')).toHaveLength(1);
    expect(await db().member.count()).toBe(1);
    expect(await db().show.count()).toBe(1);
    expect(await db().season.count()).toBe(1);
    const stored = await db().member.findFirstOrThrow();
    expect(stored.passwordHash).toMatch(/^\$argon2id\$/);
    expect(await db().log.count({ where: { kind: 'owner-claimed', memberId: stored.id } })).toBe(1);
  });

  test("[A14] a show that sample data made before becomes the owner's, with a season of its own", async () => {
    await db().member.deleteMany();
    await db().show.deleteMany();
    const place = { showName: 'An Invented Show', zone: 'UTC', season: 'Sample', titles: ['One', 'Two'] };
    const { showId } = await createSampleSeason(db(), place);
    expect(await codeOf({ ...owner, token: await link() })).toBe('ok');
    const shows = await db().show.findMany({ include: { seasons: { orderBy: { number: 'asc' } } } });
    expect(shows.map((show) => [show.id, show.name])).toEqual([[showId, 'The Lamplight Board']]);
    expect(shows[0]?.seasons.map((season) => season.isSample)).toEqual([true, false]);
  });

  test('[A14] once there is an owner, another link changes nothing', async () => {
    const token = await link();
    expect(await codeOf({ ...owner, token })).toBe('has-owner');
    expect(await db().member.count()).toBe(1);
  });
});
