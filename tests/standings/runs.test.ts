import { expect, test } from 'vitest';
import { longestRun, runAfter, type Turn } from '#lib/standings/runs.ts';

const LETTERS: Record<string, Turn> = { s: 'solved', n: 'not-solved', a: 'not-answered', v: 'void' };
const rows: [string, string, number, number][] = [
  ['nothing yet', '', 0, 0],
  ['three solved', 'sss', 3, 3],
  ['a void puzzle in between does not break it', 'ssvs', 3, 3],
  ['a void puzzle does not count towards it either', 'vvv', 0, 0],
  ['a puzzle that was not answered ends it', 'ssas', 1, 2],
  ['a wrong answer at the end', 'sssn', 0, 3],
  ['a void puzzle after a wrong answer revives nothing', 'ssnv', 0, 2],
];

test.each(rows)('[S2] %s (%s)', (_why, letters, now, longest) => {
  const history = [...letters].map((letter) => LETTERS[letter] ?? 'void');
  expect(runAfter(history)).toBe(now);
  expect(longestRun(history)).toBe(longest);
});
