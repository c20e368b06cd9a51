// The facts of a puzzle that all its answers share, worked out once for a state of the book: how many moves are
// needed (r of rule O0), and whether the result was plain in the diagram (rule O1).

import type { BookRow } from '#lib/book/book-row.ts';
import { movesLeftAtStart } from '#lib/book/claim.ts';
import { isDecidedInDiagram } from '#lib/book/decided-in-diagram.ts';
import type { PositionTree, TreeNode } from '#lib/book/position-tree.ts';
import { type PublishedLine, type PublishedLines, solverMovesOf } from '#lib/book/published-lines.ts';
import type { SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import type { ReadLine } from '#lib/reading/reading.ts';
import type { MarkedMove } from '../mark.ts';
import type { Scheme } from '../schemes.ts';
import { isFinishedByMove } from './is-finished.ts';
import type { PuzzleFacts, WalkContext } from './walk-context.ts';
import { walkLine } from './walk-line.ts';

/** What the facts are made from. */
export interface FactsInput {
  readonly terms: PuzzleTerms;
  readonly book: SolutionBook;
  readonly tree: PositionTree;
  readonly published: PublishedLines;
  readonly scheme: Scheme;
}

/** Facts for the book as it is now. What costs something is worked out when first asked for. */
export function createFacts(input: FactsInput): PuzzleFacts {
  const { terms, book, tree } = input;
  const numbers = new Map<PublishedLine, number>();
  let shortest: number | null = null;
  const facts: PuzzleFacts = {
    ...input,
    isDecided: isDecidedInDiagram(terms, book, tree.root),
    knownReplies: new WeakMap(),
    needed: (first, moves) => {
      if (terms.task.kind === 'mate') {
        shortest ??= shortestMate(input);
        return neededToMate(terms, first, shortest);
      }
      if (terms.solverMoves !== null) return terms.solverMoves;
      const closest = input.published.closest(moves);
      shortest ??= shortestInBook(facts);
      return closest.length === 0 ? shortest : numberNeeded(facts, closest, numbers);
    },
  };
  return facts;
}

function neededToMate(terms: PuzzleTerms, first: MarkedMove | null, shortest: number): number {
  const length = first?.verdict === 'holds' && first.mateIn !== null ? first.mateIn : shortest;
  return Math.max(1, length - (terms.mateWritten ? 0 : 1));
}

function shortestMate({ terms, book, tree }: FactsInput): number {
  const keys = book
    .rowsAt(tree.root.bookPosition, movesLeftAtStart(terms))
    .filter(({ verdict }) => verdict === 'holds');
  const lengths = keys.map(({ mateIn }) => mateIn ?? Number.POSITIVE_INFINITY);
  const asked = terms.task.kind === 'mate' ? terms.task.moves : 1;
  return Math.min(asked, ...lengths);
}

// Where several lines share as much, the longest: with more text the choice narrows and the number can only
// fall, so that writing on never costs (rule P3).
function numberNeeded(
  facts: PuzzleFacts,
  lines: readonly PublishedLine[],
  numbers: Map<PublishedLine, number>,
): number {
  let most = 1;
  for (const line of lines) {
    const number = numbers.get(line) ?? firstFinished(facts, line);
    numbers.set(line, number);
    most = Math.max(most, number);
  }
  return most;
}

/** Solver moves up to the first finished point of a published line; all of them where the book finds none. */
function firstFinished(facts: PuzzleFacts, published: PublishedLine): number {
  const line: ReadLine = published.moves.map((uci, ply) => ({
    uci,
    by: ply % 2 === 0 ? 'solver' : 'defender',
    start: 0,
    end: 0,
    isTypo: false,
  }));
  const allowance = { fillings: 0, lacking: new Map(), positions: new Set<string>(), mayAsk: 0 };
  const context: WalkContext = { facts, allowance, isAsking: false };
  const walk = walkLine(context, { line, endsImpossible: false, isSolverOnly: false });
  return Math.max(1, walk.outcome === 'solved' ? walk.verdicts.length : solverMovesOf(published));
}

const MOST_SOLVER_MOVES = 12;
const MOST_NODES = 2000;

// Breadth first through the moves that hold and the replies that the book has verdicts after.
function shortestInBook(facts: PuzzleFacts): number {
  let layer: TreeNode[] = [facts.tree.root];
  let seen = 0;
  for (let number = 1; number <= MOST_SOLVER_MOVES && layer.length > 0; number += 1) {
    const next: TreeNode[] = [];
    for (const node of layer) {
      for (const row of facts.book.rowsAt(node.bookPosition, null)) {
        const after = row.verdict === 'holds' ? facts.tree.play(node, row.move) : null;
        if (after === null) continue;
        if (isFinishedByRow(facts, after, row, number)) return number;
        next.push(...nodesAfter(facts, after, row));
      }
    }
    seen += next.length;
    layer = seen > MOST_NODES ? [] : next;
  }
  return 1;
}

function isFinishedByRow(facts: PuzzleFacts, node: TreeNode, row: BookRow, good: number): boolean {
  const { verdict, mateIn, value } = row;
  return isFinishedByMove(facts, node, {
    verdict: { verdict, mateIn, value, by: null, row, isOver: false, isRuled: false, isBenefit: false },
    good,
  });
}

function nodesAfter(facts: PuzzleFacts, node: TreeNode, row: BookRow): TreeNode[] {
  const nodes: TreeNode[] = [];
  for (const reply of row.adequate) {
    const after = facts.tree.play(node, reply);
    if (after !== null && facts.book.rowsAt(after.bookPosition, null).length > 0) nodes.push(after);
  }
  return nodes;
}
