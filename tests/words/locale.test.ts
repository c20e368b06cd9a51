import { describe, expect, it } from 'vitest';
import { pickLocale } from '#lib/words/locale.ts';

describe('pickLocale', () => {
  it.each<[string | null, string, string]>([
    [null, 'en', 'no header'],
    ['', 'en', 'an empty header'],
    ['de', 'de', 'the plain tag'],
    ['de-AT,de;q=0.9,en;q=0.8', 'de', 'a region counts as its language'],
    ['en-GB, de', 'en', 'of equal weights the first'],
    ['fr;q=0.9, de;q=0.5', 'de', 'a language that we lack is passed over'],
    ['en;q=0.1, de;q=0.2', 'de', 'weights decide, not the order'],
    ['de;q=0', 'en', 'q=0 turns a language down'],
    ['DE', 'de', 'case does not matter'],
    [`${'x,'.repeat(200)}de`, 'en', 'a long header is read no further than 200 characters'],
  ])('of %j picks %s: %s', (header, expected) => {
    expect(pickLocale(header)).toBe(expected);
  });
});
