import { expect, test } from 'vitest';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { type Change, looksTheSame, whatChanged } from '#lib/puzzle/correction.ts';

const terms: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: '6k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1',
  task: { kind: 'mate', moves: 1 },
  published: ['Ra8#'],
};

const rows: [string, Partial<PuzzleTerms>, Change[]][] = [
  ['nothing', {}, []],
  [
    'the position',
    { fen: '6k1/5ppp/8/8/8/8/5PPP/1R4K1 w - - 0 1', published: ['Rb8#'] },
    ['position', 'keys'],
  ],
  ['the number of moves', { task: { kind: 'mate', moves: 2 } }, ['task']],
  ['the kind of task', { task: { kind: 'win' } }, ['task']],
  ['a published line', { published: ['1.Ra8#'] }, ['keys']],
  ['one line more', { published: ['Ra8#', 'Ra8'] }, ['keys']],
  ['a bound, which decides what holds', { winBound: 250 }, ['keys']],
  ['how far to write', { mateWritten: true }, ['conditions']],
  ['a pinned end', { solverMoves: 2 }, ['conditions']],
  ['a budget, which nobody is asked about', { proofNodes: 1 }, []],
];

test.each(rows)('[A6] changing %s is told as such', (_what, change, expected) => {
  expect(whatChanged(terms, { ...terms, ...change })).toEqual(expected);
  const onlyKeys = expected.every((one) => one === 'keys');
  expect(looksTheSame(terms, { ...terms, ...change })).toBe(onlyKeys);
});
