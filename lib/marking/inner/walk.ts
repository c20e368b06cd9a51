// What a walk along a line is and where it can end. Data for rules O0 to O4.

import type { BookRow } from '#lib/book/book-row.ts';
import type { TreeNode } from '#lib/book/position-tree.ts';
import type { ReadLine } from '#lib/reading/reading.ts';
import type { MarkedMove } from '../mark.ts';

/** Where a walk ended and why. */
export interface Walk {
  readonly outcome:
    | 'solved'
    | 'slower'
    | 'unfinished'
    | 'slipped'
    | 'wrong'
    | 'impossible'
    | 'unclear'
    | 'lacking';
  /** Why, where the outcome alone does not say it. */
  readonly because:
    | 'weak-defence'
    | 'verdict'
    | 'not-verified'
    | 'too-many-fillings'
    | 'drawn-by-reply'
    | null;
  /** The last position reached; of a move that cannot be played, the position before it. */
  readonly node: TreeNode;
  /** Solver moves that hold before the stop, up to the first slower one. */
  readonly p: number;
  readonly atMove: number | null;
  /** The first solver move that was slower; null where none was. */
  readonly slowerAt: number | null;
  readonly verdicts: readonly MarkedMove[];
  /** The row of the last solver move; null where the rules settled it. */
  readonly row: BookRow | null;
  /** Moves of the line that were used up. */
  readonly used: number;
  /** Points that another filling of a gap is certain to earn while this one is unclear (rule P3). */
  readonly atLeast: number;
}

/** A line to walk. */
export interface LineToWalk {
  readonly line: ReadLine;
  /** A written move after the last one cannot be played. */
  readonly endsImpossible: boolean;
  /** Solver's moves alone: the impossible one is the solver's. */
  readonly isSolverOnly: boolean;
}

/** Where a walk stands. */
export interface Standing {
  readonly node: TreeNode;
  readonly at: number;
  readonly p: number;
  readonly slowerAt: number | null;
  readonly verdicts: readonly MarkedMove[];
  readonly row: BookRow | null;
}

/** A walk that ends here; `number` is the solver move at which it slips or cannot be played. */
export function stopWalk(standing: Standing, outcome: Walk['outcome'], number: number | null): Walk {
  const { node, p, slowerAt, verdicts, row, at } = standing;
  const isPlaced = outcome === 'slipped' || outcome === 'wrong' || outcome === 'impossible';
  return {
    outcome,
    because: null,
    node,
    p,
    atMove: isPlaced ? number : null,
    slowerAt,
    verdicts,
    row,
    used: at,
    atLeast: 0,
  };
}
