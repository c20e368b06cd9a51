import { describe, expect, it } from 'vitest';
import { countRepetitions, createTree, movesTo, type TreeNode } from '#lib/book/position-tree.ts';

function walk(fen: string, moves: string): TreeNode {
  const tree = createTree(fen);
  let node = tree.root;
  for (const move of moves.split(' ')) {
    const next = tree.play(node, move);
    if (next === null) throw new Error(`${move} is not legal`);
    node = next;
  }
  return node;
}

describe('createTree', () => {
  it('gives the position after a move, and null for a move that is not legal', () => {
    const tree = createTree('7k/8/5K2/8/8/8/6Q1/8 w - - 0 1');
    expect(tree.play(tree.root, 'g2g7')?.end).toBe('checkmate');
    expect(tree.play(tree.root, 'g2g6')?.end).toBe('stalemate');
    expect(tree.play(tree.root, 'f6h8')).toBeNull();
  });

  it('gives the same node for the same way, so that equal answers work out their chess once', () => {
    const tree = createTree('7k/8/5K2/8/8/8/6Q1/8 w - - 0 1');
    expect(tree.play(tree.root, 'g2g5')).toBe(tree.play(tree.root, 'g2g5'));
  });

  it('lists legal moves in UCI order', () => {
    expect(
      createTree('k7/8/8/8/8/8/8/K7 w - - 0 1').moves(createTree('k7/8/8/8/8/8/8/K7 w - - 0 1').root),
    ).toEqual(['a1a2', 'a1b1', 'a1b2']);
  });

  it('[V5] counts how often a position has stood on the board', () => {
    const fen = 'k7/8/8/8/8/8/7R/K7 w - - 0 1';
    expect(countRepetitions(walk(fen, 'a1b1 a8b8 b1a1 b8a8'))).toBe(2);
    expect(countRepetitions(walk(fen, 'a1b1 a8b8 b1a1 b8a8 a1b1 a8b8 b1a1 b8a8'))).toBe(3);
    expect(countRepetitions(walk(fen, 'a1b1 a8b8 b1c1'))).toBe(1);
  });

  it('[V5] ends the game at a half-move clock of a hundred, and puts the clock into the key from eighty on', () => {
    const node = walk('k7/8/8/8/8/8/7R/K7 w - - 98 80', 'a1b1 a8b8');
    expect([node.end, node.bookPosition]).toEqual(['fifty-moves', '1k6/8/8/8/8/8/7R/1K6 w - - 100']);
  });

  it('remembers the way', () => {
    const node = walk('k7/8/8/8/8/8/7R/K7 w - - 0 1', 'a1b1 a8b8 b1c1');
    expect([movesTo(node), node.ply]).toEqual([['a1b1', 'a8b8', 'b1c1'], 3]);
  });

  it('answers the same after its memory was cleared', () => {
    const tree = createTree('4k3/8/8/8/8/8/8/QQQ1K3 w - - 0 1');
    for (const first of tree.moves(tree.root)) {
      const node = tree.play(tree.root, first);
      if (node === null) continue;
      for (const reply of tree.moves(node)) {
        const next = tree.play(node, reply);
        for (const move of next === null ? [] : tree.moves(next)) if (next !== null) tree.play(next, move);
      }
    }
    expect(tree.play(tree.root, 'a1a8')?.key).toBe('Q3k3/8/8/8/8/8/8/1QQ1K3 b - -');
  });
});
