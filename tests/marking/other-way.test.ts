import { describe, expect, it } from 'vitest';
import { createTree, movesTo, type TreeNode } from '#lib/book/position-tree.ts';
import { readPublishedLines } from '#lib/book/published-lines.ts';
import { DEFAULT_TERMS } from '#lib/book/terms.ts';
import { findOtherWay } from '#lib/marking/other-way.ts';

// Two rooks against a king; only the way through the published line matters here, not what holds.
const TERMS = {
  ...DEFAULT_TERMS,
  fen: '7k/1R6/8/8/8/8/8/R6K w - - 0 1',
  task: { kind: 'mate', moves: 3 },
} as const;

function leaves(published: readonly string[], moves: string, good: number): string[] | null {
  const tree = createTree(TERMS.fen);
  let end: TreeNode | null = tree.root;
  for (const move of moves.split(' ')) end = end === null ? null : tree.play(end, move);
  if (end === null) throw new Error(`cannot be played: ${moves}`);
  const node = findOtherWay(readPublishedLines({ ...TERMS, published }, tree), end, good);
  return node === null ? null : movesTo(node);
}

describe('findOtherWay', () => {
  const main = '1.Rc7 Kg8 2.Rd7 Kh8 3.Ra8#';
  const cases: [string, readonly string[], string, number, string[] | null][] = [
    ['the published way', [main], 'b7c7 h8g8 c7d7', 2, null],
    ['another first move', [main], 'b7e7', 1, []],
    ['another second move', [main], 'b7c7 h8g8 a1a8', 2, ['b7c7', 'h8g8']],
    ['a second published line has it', [main, '1.Rc7 Kg8 2.Ra8#'], 'b7c7 h8g8 a1a8', 2, null],
    ['the move did not hold', [main], 'b7e7', 0, null],
    ['the other move comes behind the last that holds', [main], 'b7c7 h8g8 a1a8', 1, null],
    ['it comes back to a published position', [main], 'b7e7 h8g8 e7d7 g8h8 a1a8', 3, null],
    ['nothing was published', [], 'b7e7', 1, null],
  ];
  it.each(cases)('[A5] %s', (_, published, moves, good, expected) => {
    expect(leaves(published, moves, good)).toEqual(expected);
  });
});
