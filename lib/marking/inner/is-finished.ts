// Is a line finished? Rule O1, asked after each solver move that holds or is slower and after each reply.

import { countRepetitions, movesTo, type TreeNode } from '#lib/book/position-tree.ts';
import { solverMovesOf } from '#lib/book/published-lines.ts';
import type { VerdictAt } from './verdict-at.ts';
import type { PuzzleFacts } from './walk-context.ts';

/** True where the line is finished by the solver move that led to `node`, the `good`-th that holds. */
export function isFinishedByMove(
  facts: PuzzleFacts,
  node: TreeNode,
  { verdict, good }: { readonly verdict: VerdictAt; readonly good: number },
): boolean {
  const { terms } = facts;
  if (node.end === 'checkmate') return true;
  switch (terms.task.kind) {
    case 'mate':
      // Mate in one whatever the reply: the last reply and the mating move need not be written.
      return verdict.mateIn !== null && verdict.mateIn <= (terms.mateWritten ? 1 : 2);
    case 'win':
      if (terms.solverMoves !== null) return good >= terms.solverMoves;
      return facts.isDecided ? good >= publishedNumber(facts, node) : verdict.row?.evident === true;
    case 'draw':
      if (verdict.isOver) return true;
      if (!facts.isDecided && verdict.row?.evident === true) return true;
      return good >= (terms.solverMoves ?? publishedNumber(facts, node));
  }
}

/** `finished` or `drawn` where the defender's reply that led to `node` ends the line; else null. */
export function endByReply(facts: PuzzleFacts, node: TreeNode): 'finished' | 'drawn' | null {
  const task = facts.terms.task.kind;
  if (task === 'mate') return null;
  const isDraw = node.end !== null && node.end !== 'checkmate';
  if (task === 'draw') return isDraw || countRepetitions(node) >= 2 ? 'finished' : null;
  return isDraw || countRepetitions(node) >= 3 ? 'drawn' : null;
}

// Of the published lines that share most with this one, the shortest: whoever plays it out is done.
function publishedNumber({ published }: PuzzleFacts, node: TreeNode): number {
  const lines = published.closest(movesTo(node)).filter((line) => line.moves.length > 0);
  return Math.min(...lines.map(solverMovesOf));
}
