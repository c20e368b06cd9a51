import { describe, expect, test } from 'vitest';
import { findLookAlike, nameSkeleton, parseName, tameName } from '#lib/people/names.ts';

describe('[A18] names that may be shown', () => {
  const rows: [string, string, string | null][] = [
    ['plain', 'Ilse Varga', 'Ilse Varga'],
    ['blanks around and doubled', '  Ilse   Varga \n', 'Ilse Varga'],
    ['an accent typed as two characters becomes one', 'Rene\u0301', 'René'],
    ['no name at all', '   ', null],
    ['Arabic letters need no direction marks', 'نور', 'نور'],
    ['a joiner inside a Persian word is part of its spelling', 'می\u200cخواهم', 'می\u200cخواهم'],
    ['joined signs count as one', '👩\u200d👧 Ann', '👩\u200d👧 Ann'],
    ['exactly 40 graphemes, each of two code points', 'e\u0323'.repeat(40), 'ẹ'.repeat(40)],
    ['Devanagari marks', 'हिन्दी', 'हिन्दी'],
    ['underscore and figures', 'rook_77', 'rook_77'],
  ];
  test.each(rows)('[A18] %s', (_why, text, expected) => {
    expect(parseName(text)).toEqual({ ok: true, value: expected });
  });
});

describe('[A18] names that are refused, with the reason', () => {
  const rows: [string, string, object][] = [
    ['a line break inside', 'Ilse\nVarga', { code: 'control-character', at: 4, codePoint: 'U+000A' }],
    ['NUL', 'Il\u0000se', { code: 'control-character', at: 2, codePoint: 'U+0000' }],
    ['a line separator', 'Il\u2028se', { code: 'control-character', at: 2, codePoint: 'U+2028' }],
    ['right-to-left override', 'Ann\u202eymene', { code: 'direction-character', at: 3, codePoint: 'U+202E' }],
    ['an isolate', '\u2067Ann', { code: 'direction-character', at: 0, codePoint: 'U+2067' }],
    ['zero-width space', 'An\u200bn', { code: 'invisible-character', at: 2, codePoint: 'U+200B' }],
    [
      'a joiner between Latin letters',
      'An\u200dn',
      { code: 'invisible-character', at: 2, codePoint: 'U+200D' },
    ],
    ['tag characters', `Ann\u{e0041}`, { code: 'invisible-character', at: 3, codePoint: 'U+E0041' }],
    ['half a surrogate pair', 'An\ud83d', { code: 'control-character', at: 2, codePoint: 'U+D83D' }],
    ['50 combining marks', `A${'\u0300\u0301'.repeat(25)}`, { code: 'stacked-marks', at: 1 }],
    ['41 graphemes', 'x'.repeat(41), { code: 'too-long', graphemes: 41, most: 40 }],
    ['10,000 characters', 'x'.repeat(10_000), { code: 'too-long', graphemes: 4000, most: 40 }],
  ];
  test.each(rows)('[A18] %s', (_why, text, expected) => {
    expect(parseName(text)).toEqual({ ok: false, reason: expected });
  });
});

describe('[A18] names from comments are made presentable', () => {
  const rows: [string, string, string | null][] = [
    ['direction marks fall away', '\u202eAnn', 'Ann'],
    ['line breaks become blanks', 'Ann\r\nBee', 'Ann Bee'],
    ['the forty-first grapheme is cut', 'x'.repeat(60), `${'x'.repeat(39)}…`],
    ['nothing but invisible characters', '\u200b\u202e\u0000', null],
    ['marks beyond four fall away', `A${'\u0316'.repeat(50)}`, `A${'\u0316'.repeat(4)}`],
  ];
  test.each(rows)('[A18] %s', (_why, text, expected) => {
    expect(tameName(text)).toBe(expected);
  });

  test('[A18] what is made presentable is then accepted as it stands', () => {
    for (const text of ['\u202eAnn\n', 'x'.repeat(60), `A${'\u0316'.repeat(50)}`, 'An\u200bn']) {
      const tamed = tameName(text);
      expect(parseName(tamed ?? '')).toEqual({ ok: true, value: tamed });
    }
  });
});

describe('[A18] look-alikes', () => {
  const rows: [string, string, string, boolean][] = [
    ['Cyrillic a', 'Аnnа', 'Anna', true],
    ['a digit for a letter', 'R0OK', 'rook', true],
    ['full-width letters', 'Ａｎｎ', 'Ann', true],
    ['r and n for m', 'Torn', 'Tom', true],
    ['blanks and dots', 'A. n n', 'Ann', true],
    ['l and I', 'lIse', 'Ilse', true],
    ['other people', 'Anna', 'Annika', false],
    ['two names of signs alone do not match by being empty', '---', '...', false],
  ];
  test.each(rows)('[A18] %s', (_why, name, other, expected) => {
    expect(findLookAlike(name, ['Somebody', other]) === other).toBe(expected);
    expect(nameSkeleton(name) !== '' && nameSkeleton(name) === nameSkeleton(other)).toBe(expected);
  });
});
