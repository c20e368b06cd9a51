import { expect, test } from 'vitest';
import { parseEntropy } from '#lib/lots/parse-entropy.ts';
import { accepted, refused } from '../support/positions.ts';

test.each([
  ['one number', '9319', '9319./'],
  ['a set is sorted as numbers, not as text', '2 5 12 8 10', '2.5.8.10.12./'],
  ['sources keep their order', '9319 / 2, 5, 12, 8, 10 / 9; 18; 26', '9319./2.5.8.10.12./9.18.26./'],
  ['the key itself', '9319./2.5.8.10.12./', '9319./2.5.8.10.12./'],
  ['leading zeros go (RFC 3797, section 4)', '0007 00', '0.7./'],
  ['a number twice stays twice', '5 5', '5.5./'],
  ['numbers beyond 53 bits keep every digit', '123456789012345678901', '123456789012345678901./'],
])('[S4] %s', (_what, text, key) => {
  expect(accepted(parseEntropy(text))).toBe(key);
});

test.each([
  ['nothing', '', { code: 'no-numbers', source: 1 }],
  ['an empty source', '5 // 6', { code: 'no-numbers', source: 2 }],
  ['a word', '5 / closing price', { code: 'not-a-number', source: 2, found: 'closing' }],
  ['a negative number', '-5', { code: 'not-a-number', source: 1, found: '-5' }],
])('[S4] refused: %s', (_what, text, reason) => {
  expect(refused(parseEntropy(text))).toEqual(reason);
});
