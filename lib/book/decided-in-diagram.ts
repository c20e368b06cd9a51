// Was the result plain in the diagram already? Rule O1: then a table result or an evident win finishes no line,
// and the number of moves counts, pinned or published.

import type { Kind, Position } from '#lib/rules/position.ts';
import { KINDS, sideOf } from '#lib/rules/position.ts';
import type { TreeNode } from './position-tree.ts';
import type { SolutionBook } from './solution-book.ts';
import type { PuzzleTerms } from './terms.ts';

/** Usual values in centipawns, for what a glance at the board tells. Common practice, no source. */
const WORTH: Readonly<Record<Kind, number>> = { p: 100, n: 300, b: 300, r: 500, q: 900, k: 0 };
const MOST_MEN_OF_A_TABLE = 4;

/**
 * True where the diagram is won or drawn by an endgame table, or (win tasks) where the win is evident in it:
 * the solver is ahead by the win bound in men alone and at least two first moves hold. Needs the verdicts on
 * the first moves; false while they are missing. Never in mate tasks.
 */
export function isDecidedInDiagram(terms: PuzzleTerms, book: SolutionBook, root: TreeNode): boolean {
  if (terms.task.kind === 'mate') return false;
  const holding = book.rowsAt(root.bookPosition, null).filter(({ verdict }) => verdict === 'holds');
  const { position } = root;
  const hasTable = countMen(position) <= MOST_MEN_OF_A_TABLE && position.castling === 0;
  if (hasTable && holding.some(({ evidence, mateIn }) => evidence.kind === 'table' || mateIn !== null))
    return true;
  return terms.task.kind === 'win' && holding.length >= 2 && advantageInMen(position) >= terms.winBound;
}

function countMen(position: Position): number {
  return position.board.reduce((count, man) => count + (man === 0 ? 0 : 1), 0);
}

/** Centipawns in men alone, from the side to move. */
export function advantageInMen(position: Position): number {
  let sum = 0;
  for (const man of position.board) {
    const kind = KINDS[(man & 7) - 1];
    if (kind === undefined) continue;
    sum += sideOf(man) === position.turn ? WORTH[kind] : -WORTH[kind];
  }
  return sum;
}
