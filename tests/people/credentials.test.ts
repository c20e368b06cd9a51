import { describe, expect, test } from 'vitest';
import { parseCredentials, parseSignInName } from '#lib/people/credentials.ts';

describe('[A13] sign-in names', () => {
  const rows: [string, string | null][] = [
    ['Mara', 'mara'],
    ['  mara.lind-2 ', 'mara.lind-2'],
    ['m', null],
    ['', null],
    ['.mara', null],
    ['mara lind', null],
    ['mára', null],
    ['m\u0430ra', null],
    ['x'.repeat(41), null],
    ['mara@example.org', null],
  ];
  test.each(rows)('[A13] %j is %j', (text, expected) => {
    expect(parseSignInName(text)).toBe(expected);
  });
});

describe('[A13] passwords', () => {
  const rows: [string, string, string, string][] = [
    ['twelve characters are enough', 'mara', 'correct hors', 'ok'],
    ['eleven are not', 'mara', 'correct hor', 'password-too-short'],
    ['201 are too many', 'mara', 'x'.repeat(201), 'password-too-long'],
    ['a password with the name in it', 'maralind', 'MaraLind-2026!', 'password-is-name'],
    ['a bad name is said first', '', 'short', 'bad-sign-in-name'],
  ];
  test.each(rows)('[A13] %s', (_why, name, password, expected) => {
    const parsed = parseCredentials(name, password);
    expect(parsed.ok ? 'ok' : parsed.reason.code).toBe(expected);
  });

  test('[A13] one password typed in two ways is one password', () => {
    const composed = parseCredentials('mara', 'längeres Wort');
    const decomposed = parseCredentials('mara', 'la\u0308ngeres Wort');
    expect(composed).toEqual(decomposed);
  });
});
