import { expect, test } from 'vitest';
import { countWords, readingSeconds } from '#lib/readout/reading-time.ts';

test('[S3] words are counted as an ear hears them: a dash alone is none, a square is one', () => {
  expect(countWords('Rook to h1 – and mate.')).toBe(5);
  expect(countWords('  ')).toBe(0);
});

test('[S3] 150 words take a minute at 150 words a minute, and each full stop a breath', () => {
  const text = Array.from({ length: 150 }, () => 'word').join(' ');
  expect(readingSeconds(text, 150)).toBeCloseTo(60);
  expect(readingSeconds(`${text}. Yes.`, 150)).toBeCloseTo(61.2);
  expect(readingSeconds(text, 75)).toBeCloseTo(120);
});
