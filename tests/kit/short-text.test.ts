import { expect, test } from 'vitest';
import { parseShortText } from '#lib/kit/short-text.ts';

const cases: [string, string, string, string][] = [
  ['a plain remark', 'It was fine.', 'It was fine.', 'nothing to do'],
  ['blanks at its ends', '  so \n ', 'so', 'a form sends them'],
  ['a decomposed letter', 'Zoe\u0308', 'Zoë', 'NFC, so that it is counted as seen'],
  ['line ends of a form', 'one\r\ntwo\rthree', 'one\ntwo\nthree', 'browsers send CR LF'],
  ['NUL and other unseen signs', 'a\0b\u0007c', 'a\ufffdb\ufffdc', 'no database keeps NUL'],
  ['half a surrogate pair', 'a\ud83d', 'a\ufffd', 'JSON can carry it'],
  ['many empty lines', `a${'\n \n'.repeat(200)}b`, 'a\n\nb', 'a page is not to be pushed away'],
  ['direction signs', '\u202eabc', '\u202eabc', 'kept: shown in a block of its own'],
  ['markup', '<b>&amp;</b>', '<b>&amp;</b>', 'kept: escaped where shown'],
  ['only blanks', ' \n\t ', '', 'no words at all'],
];
test.each(cases)('[A2] %s', (_what, text, expected) => {
  expect(parseShortText(text, 500)).toEqual({ ok: true, value: expected });
});

test('[A2] length is counted in characters, after cleaning, and named in the refusal', () => {
  expect(parseShortText('é'.repeat(500), 500).ok).toBe(true);
  expect(parseShortText('e\u0301'.repeat(500), 500).ok).toBe(true);
  expect(parseShortText(`${'\u{1f600}'.repeat(500)}  `, 500).ok).toBe(true);
  expect(parseShortText('x'.repeat(501), 500)).toEqual({
    ok: false,
    reason: { code: 'too-long', length: 501, most: 500 },
  });
  expect(parseShortText('x'.repeat(10_000), 500)).toMatchObject({ reason: { length: 10_000 } });
});

test('[R7] hostile lengths and blanks are cleaned in no time', () => {
  const started = process.cpuUsage().user;
  for (const one of ['\n \t', ' ', '\u0301', '\0', '\u202e'])
    expect(parseShortText(one.repeat(60_000), 500)).toBeDefined();
  expect((process.cpuUsage().user - started) / 1000).toBeLessThan(1000);
});
