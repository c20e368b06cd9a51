import { describe, expect, test } from 'vitest';
import { configSentence, parseConfig } from '#lib/machine/config.ts';

const MACHINE = { cores: 6, folder: '/srv/tailpiece' };

describe('settings', () => {
  test('nothing set: this machine alone, port 8471, a folder beside the program', () => {
    const read = parseConfig({}, MACHINE);
    expect(read.ok && read.value).toMatchObject({
      port: 8471,
      host: '127.0.0.1',
      publicUrl: 'http://127.0.0.1:8471',
      dataDir: '/srv/tailpiece/.data',
      databaseUrl: null,
      engineThreads: 6,
      uciProgram: null,
      trustProxy: 0,
      oidc: null,
      pauseBeforeCommitMs: 0,
    });
  });

  test('an empty value counts as not set, and an address loses its last slash', () => {
    const read = parseConfig({ PORT: '', PUBLIC_URL: 'https://puzzles.example.org/' }, MACHINE);
    expect(read.ok && [read.value.port, read.value.publicUrl]).toEqual([8471, 'https://puzzles.example.org']);
  });

  test.each([
    ['PORT', 'abc', /PORT is wrong: expected a whole number from 1 to 65535, found "abc"/],
    ['PORT', '0', /whole number from 1 to 65535/],
    ['PORT', '80.5', /whole number/],
    ['HOST', 'a b', /HOST is wrong: expected a host name/],
    ['PUBLIC_URL', 'puzzles', /PUBLIC_URL is wrong: expected an address like/],
    ['PUBLIC_URL', 'javascript:alert(1)', /PUBLIC_URL is wrong/],
    ['DATABASE_URL', 'mysql://x', /DATABASE_URL is wrong: expected an address like postgresql:/],
    ['ENGINE_THREADS', '-1', /ENGINE_THREADS is wrong/],
    ['TRUST_PROXY', 'yes', /TRUST_PROXY is wrong/],
    ['TAILPIECE_LOG_LEVEL', 'loud', /expected debug, info, warn, error or silent/],
    ['TAILPIECE_BEAT_SECONDS', '60', /seconds from 0.1 to 15/],
    ['TAILPIECE_PROT', '1', /TAILPIECE_PROT is not a setting of this program; expected one of TAILPIECE_/],
  ])(
    '%s=%s stops the start with a sentence that names it and says what was expected',
    (name, value, sentence) => {
      const read = parseConfig({ [name]: value }, MACHINE);
      expect(read.ok ? '' : configSentence(read.reason)).toMatch(sentence);
    },
  );

  test('a secret or an address with a password is never shown in the sentence', () => {
    for (const name of ['TAILPIECE_SECRET', 'DATABASE_URL']) {
      const read = parseConfig({ [name]: 'hunter2' }, MACHINE);
      expect(read.ok ? 'accepted' : configSentence(read.reason)).not.toContain('hunter2');
    }
  });

  test('a provider needs all three of its settings', () => {
    const read = parseConfig({ TAILPIECE_OIDC_ISSUER: 'https://login.example.org' }, MACHINE);
    expect(read.ok ? '' : configSentence(read.reason)).toMatch(
      /TAILPIECE_OIDC_CLIENT_ID is wrong: expected to be set too/,
    );
  });
});
