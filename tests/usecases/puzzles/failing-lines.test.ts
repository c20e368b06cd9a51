import { expect, test } from 'vitest';
import { countFailingLines } from '#lib/usecases/puzzles/failing-lines.ts';

test.each([
  ['no report', null, 0],
  ['a report without lines', { v: 1, publishedLines: [] }, 0],
  ['all solved', { publishedLines: [{ outcome: 'solved' }] }, 0],
  [
    'two that fail',
    { publishedLines: [{ outcome: 'wrong' }, { outcome: 'solved' }, { outcome: 'unclear' }] },
    2,
  ],
  ['a shape that is not known', { publishedLines: 'many' }, 0],
])('[V9] lines that fail their own marking: %s', (_, report, count) => {
  expect(countFailingLines(report)).toBe(count);
});
