import { describe, expect, it } from 'vitest';
import { createTree } from '#lib/book/position-tree.ts';
import { readPublishedLines, solverMovesOf } from '#lib/book/published-lines.ts';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';

const terms: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: '7k/8/8/8/8/8/R7/1R4K1 w - - 0 1',
  task: { kind: 'mate', moves: 3 },
  published: ['1.Ra6 Kg8 2.Rb7 Kf8 3.Ra8#', '1. Ta6 Kh7 2. Tb7+', 'no moves here'],
};
const tree = createTree(terms.fen);
const lines = readPublishedLines(terms, tree);

describe('readPublishedLines', () => {
  it("[V9] reads the host's lines like a viewer's, in any notation", () => {
    expect(lines.lines.map(({ moves }) => moves.join(' '))).toEqual([
      'a2a6 h8g8 b1b7 g8f8 a6a8',
      'a2a6 h8h7 b1b7',
      '',
    ]);
    expect(lines.lines.map(solverMovesOf)).toEqual([3, 2, 0]);
  });

  it('[O2] knows the replies of all lines', () => {
    const key = tree.play(tree.root, 'a2a6')?.key ?? '';
    expect(['h8g8', 'h8h7', 'h8g7'].map((reply) => lines.isReply(key, reply))).toEqual([true, true, false]);
  });

  it('[O0] finds the lines that share the longest beginning', () => {
    const closest = (moves: string) =>
      lines.closest(moves.split(' ')).map(({ text }) => lines.lines.findIndex((line) => line.text === text));
    expect(closest('a2a6 h8h7')).toEqual([1]);
    expect(closest('a2a6 h8g7 b1b7')).toEqual([0, 1]);
    expect(closest('a2a7')).toEqual([0, 1, 2]);
  });

  it('knows which positions are reached, the last one too', () => {
    let node = tree.root;
    for (const move of ['a2a6', 'h8h7', 'b1b7']) node = tree.play(node, move) ?? node;
    expect(lines.isReached(node.key)).toBe(true);
    expect(lines.movesAt(node.key)?.size).toBe(0);
    expect(lines.movesAt('nowhere')).toBeNull();
  });
});
