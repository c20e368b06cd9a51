import { expect, test } from 'vitest';
import type { Turn } from '#lib/standings/runs.ts';
import { type SolverStory, thingsToSay } from '#lib/standings/things-to-say.ts';

const LETTERS: Record<string, Turn> = { s: 'solved', n: 'not-solved', a: 'not-answered', v: 'void' };
function story(history: string, more: Partial<SolverStory> = {}): SolverStory {
  return {
    history: [...history].map((letter) => LETTERS[letter] ?? 'void'),
    wasWronged: false,
    toppedLadder: false,
    foundOtherWay: false,
    otherWayFinders: 0,
    foundBoth: false,
    sawBestDefence: false,
    goodWords: null,
    isPraiseBarred: false,
    ...more,
  };
}

const rows: [string, SolverStory, string[]][] = [
  ['the first answer of all', story('aas'), ['first-time']],
  ['a first answer that is wrong is a first time too', story('n'), ['first-time']],
  ['back after four missed puzzles', story('saaaas'), ['return']],
  ['three missed puzzles are not worth a word', story('saaas'), []],
  ["void puzzles are nobody's absence", story('svvvvs'), []],
  ['a run of three', story('nsss'), ['run']],
  ['a run of four has been said', story('ssss'), []],
  ['a run of five', story('sssss'), ['run']],
  ['a run of twenty', story('s'.repeat(20)), ['run']],
  [
    'the only one to find another way',
    story('ss', { foundOtherWay: true, otherWayFinders: 1 }),
    ['only-other-way'],
  ],
  ['another way that two found', story('ss', { foundOtherWay: true, otherWayFinders: 2 }), []],
  [
    'corrections come first',
    story('sss', { wasWronged: true, goodWords: 'lovely' }),
    ['put-right', 'run', 'good-words'],
  ],
  [
    '[T3] an edit first seen after the reveal bars praise, not a correction',
    story('sss', { isPraiseBarred: true, wasWronged: true, foundBoth: true }),
    ['put-right'],
  ],
  [
    'topped the ladder, found both, saw the best defence',
    story('ss', { toppedLadder: true, foundBoth: true, sawBestDefence: true }),
    ['topped-ladder', 'found-both', 'best-defence'],
  ],
];

test.each(rows)('[S3] %s', (_why, told, expected) => {
  expect(thingsToSay(told).map((thing) => thing.code)).toEqual(expected);
});

test('[S3] a run and a return carry their length', () => {
  expect(thingsToSay(story('sss'))).toContainEqual({ code: 'run', length: 3 });
  expect(thingsToSay(story('saaaaan'))).toContainEqual({ code: 'return', missed: 5 });
});
