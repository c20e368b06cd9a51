// Where does an answer leave the published lines for another way that works? Section 4 of the marking rules, flag
// `other-way`; rule A5 tells the host of it.

import { movesTo, type TreeNode } from '#lib/book/position-tree.ts';
import type { PublishedLines } from '#lib/book/published-lines.ts';

/**
 * The node before the first of the `good` solver moves up to `end` that is not the published one at a position which
 * a published line reaches, where the line does not come back to a published position before the last of them; null
 * where there is none. Costs a look-up for each move.
 */
export function findOtherWay(published: PublishedLines, end: TreeNode, good: number): TreeNode | null {
  if (published.lines.length === 0) return null;
  const nodes = pathTo(end);
  const moves = movesTo(end);
  const last = 2 * (good - 1);
  for (let ply = 0; ply <= last; ply += 2) {
    const node = nodes[ply];
    const known = node === undefined ? null : published.movesAt(node.key);
    if (node === undefined || known === null || known.size === 0 || known.has(moves[ply] ?? '')) continue;
    const comesBack = nodes.slice(ply + 1, last + 1).some(({ key }) => published.isReached(key));
    if (!comesBack) return node;
  }
  return null;
}

function pathTo(node: TreeNode): TreeNode[] {
  const path: TreeNode[] = [];
  for (let at: TreeNode | null = node; at !== null; at = at.parent) path.push(at);
  return path.reverse();
}
