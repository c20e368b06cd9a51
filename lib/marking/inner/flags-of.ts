// Which flags stand beside the outcome? Section 4 of the marking rules, those that follow from reading and book.

import { movesTo, type TreeNode } from '#lib/book/position-tree.ts';
import type { ReadResult } from '#lib/reading/reading.ts';
import type { Flag } from '../mark.ts';
import type { Beyond } from './beyond-the-end.ts';
import type { Judged } from './judge-reading.ts';
import type { PuzzleFacts } from './walk-context.ts';

/** Flags of a line that was taken, in a fixed order. */
export function flagsOf(
  facts: PuzzleFacts,
  judged: Judged,
  {
    read,
    beyond,
    isGenerous,
  }: { readonly read: ReadResult; readonly beyond: Beyond; readonly isGenerous: boolean },
): Flag[] {
  const { walk, reading, line, outcome } = judged;
  const isFinished = outcome === 'solved' || outcome === 'slower';
  const has: readonly (readonly [Flag, boolean])[] = [
    ['other-way', isOtherWay(facts, walk.node, walk.p)],
    ['generous', isGenerous || reading.isGenerous],
    ['typo', line.line.some(({ isTypo }) => isTypo)],
    ['solver-only', reading.isSolverOnly],
    ['weak-defence', walk.because === 'weak-defence'],
    ['past-the-end', isFinished && beyond.goesWrong],
    ['still-winning', walk.row?.stillWinning === true && (outcome === 'wrong' || outcome === 'slipped')],
    ['found-both', judged.hasFoundBoth],
    ['cut-by-source', read.isCutBySource],
    ['benefit-of-doubt', walk.verdicts.some(({ isBenefit }) => isBenefit === true)],
  ];
  return has.filter(([, isSet]) => isSet).map(([flag]) => flag);
}

// At a position that a published line reaches, one of the `good` moves is not the published one, and the line does
// not come back to a published position before the last of them.
function isOtherWay({ published }: PuzzleFacts, end: TreeNode, good: number): boolean {
  if (published.lines.length === 0) return false;
  const nodes = pathTo(end);
  const moves = movesTo(end);
  const last = 2 * (good - 1);
  for (let ply = 0; ply <= last; ply += 2) {
    const known = published.movesAt(nodes[ply]?.key ?? '');
    if (known === null || known.size === 0 || known.has(moves[ply] ?? '')) continue;
    const comesBack = nodes.slice(ply + 1, last + 1).some(({ key }) => published.isReached(key));
    if (!comesBack) return true;
  }
  return false;
}

function pathTo(node: TreeNode): TreeNode[] {
  const path: TreeNode[] = [];
  for (let at: TreeNode | null = node; at !== null; at = at.parent) path.push(at);
  return path.reverse();
}
