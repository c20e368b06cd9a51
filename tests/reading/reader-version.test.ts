import { expect, test } from 'vitest';
import { readText } from '#lib/reading/read-text.ts';
import { READER_VERSION } from '#lib/reading/reader-version.ts';
import { positionOf, START_FEN } from '../support/positions.ts';

test('[A4] every result names the reader that made it, a whole number from 1', () => {
  expect(Number.isInteger(READER_VERSION) && READER_VERSION >= 1).toBe(true);
  expect(readText({ position: positionOf(START_FEN), text: 'e4' }).readerVersion).toBe(READER_VERSION);
});
