import { expect, test } from 'vitest';
import { countFailingLines } from '#lib/usecases/puzzles/failing-lines.ts';

test.each([
  ['every line solves', { v: 1, publishedLines: [{ outcome: 'solved' }] }, 0],
  ['no line at all', { v: 1, publishedLines: [] }, 0],
  [
    'whatever is not solved counts, also what is merely unclear',
    { publishedLines: [{ outcome: 'wrong' }, { outcome: 'solved' }, { outcome: 'unclear' }] },
    2,
  ],
  ['no report', null, 0],
  ['something else', 'text', 0],
])('[V9] %s', (_what, report, count) => {
  expect(countFailingLines(report)).toBe(count);
});
