// What a walk along a line needs to know: terms, book, tree of positions, published lines, and how much it may
// still ask for.

import type { BookRow, Lacking } from '#lib/book/book-row.ts';
import type { PositionTree, TreeNode } from '#lib/book/position-tree.ts';
import type { PublishedLines } from '#lib/book/published-lines.ts';
import type { SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { MarkedMove } from '../mark.ts';
import type { Scheme } from '../schemes.ts';

/** What a row says of the replies; worked out once a row, because a thousand fillings meet the same few. */
export interface KnownReplies {
  readonly values: ReadonlyMap<Uci, BookRow['replies'][number]>;
  /** The lowest value, the defender's best. */
  readonly best: number;
}

/** The facts of a puzzle, the same for all its answers. */
export interface PuzzleFacts {
  readonly terms: PuzzleTerms;
  readonly book: SolutionBook;
  readonly tree: PositionTree;
  readonly published: PublishedLines;
  readonly scheme: Scheme;
  /** Was the result plain in the diagram already (rule O1)? Then the number of moves counts. */
  readonly isDecided: boolean;
  /** What rows say of replies, as far as it was asked. */
  readonly knownReplies: WeakMap<BookRow, KnownReplies>;
  /** Solver moves needed, r of rule O0, for a line with this first verdict and these moves; at least 1. */
  readonly needed: (first: MarkedMove | null, moves: readonly Uci[]) => number;
}

/** What one answer has used up. Changed along the way. */
export interface Allowance {
  /** Gap fillings tried (rule O3: at most 1,000). */
  fillings: number;
  /** Verdicts that the book lacks, by place and move. */
  readonly lacking: Map<string, Lacking>;
  /** Positions among them. */
  readonly positions: Set<string>;
  /** How many positions may be asked for. */
  readonly mayAsk: number;
}

export interface WalkContext {
  readonly facts: PuzzleFacts;
  readonly allowance: Allowance;
  /** False along branches, which use what the book has (mechanics). */
  readonly isAsking: boolean;
}

/** Fillings of gaps that one answer may take (rule O3). */
export const MOST_FILLINGS = 1000;

/** Solver moves played before a position with the solver to move. */
function solverMovesBefore(node: TreeNode): number {
  return node.ply >> 1;
}

/** Solver moves left at a position of a mate task, this move included; null in the other tasks. */
export function movesLeftAt(terms: PuzzleTerms, node: TreeNode): number | null {
  return terms.task.kind === 'mate' ? terms.task.moves - solverMovesBefore(node) : null;
}
