import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { keyedHash, sha256 } from '#lib/machine/hash.ts';
import { loadSecrets } from '#lib/machine/secrets.ts';
import { isToken, randomToken } from '#lib/machine/tokens.ts';

const folder = mkdtempSync(join(tmpdir(), 'tailpiece-secrets-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('secrets are made once, mode 600, and found again', () => {
  const made = loadSecrets(join(folder, 'data'));
  expect(loadSecrets(join(folder, 'data'))).toEqual(made);
  expect(made.master).not.toBe(made.databasePassword);
  expect(statSync(join(folder, 'data/secrets.json')).mode & 0o777).toBe(0o600);
});

test('a damaged file is not replaced: the receipts would be lost', () => {
  const file = join(folder, 'data/secrets.json');
  writeFileSync(file, '{"v":1}');
  expect(() => loadSecrets(join(folder, 'data'))).toThrow(/does not hold the secrets/);
  expect(readFileSync(file, 'utf8')).toBe('{"v":1}');
});

test('tokens are 128 random bits in 22 characters', () => {
  const tokens = Array.from({ length: 1000 }, randomToken);
  expect(tokens.every(isToken)).toBe(true);
  expect(new Set(tokens).size).toBe(1000);
  expect(isToken(`${tokens[0]}x`) || isToken('a b') || isToken('')).toBe(false);
});

test('hashes agree with published values', () => {
  // FIPS 180-2, appendix B.1; RFC 4231, test case 2.
  expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  expect(keyedHash('Jefe', 'what do ya want for nothing?')).toBe(
    '5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843',
  );
});
