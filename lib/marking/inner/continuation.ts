// How would it have gone on? The moves from the end of a walk that the book knows, for explanations. Proof trees
// are not looked at: a book is often loaded without them, and the mark has to be the same (rule A4).

import type { BookRow } from '#lib/book/book-row.ts';
import { movesTo, type TreeNode } from '#lib/book/position-tree.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { Walk } from './walk.ts';
import { movesLeftAt, type PuzzleFacts } from './walk-context.ts';

/**
 * How the published line goes on, in a win or a draw; else the longest defence and how it is met, up to `solverMoves`
 * solver moves. Empty where nothing is known.
 */
export function continuationOf(facts: PuzzleFacts, walk: Walk, solverMoves: number): readonly Uci[] {
  const { row, node } = walk;
  const published = facts.terms.task.kind === 'mate' ? [] : publishedRest(facts, node);
  if (published.length > 0) return published.slice(0, 2 * solverMoves - (node.ply % 2 === 1 ? 0 : 1));
  if (row === null) return [];
  const { evidence } = row;
  if (evidence.kind === 'search' || evidence.kind === 'table') {
    // After the solver's move, or after the one reply to it that the text gave.
    if (node.ply % 2 === 1) return evidence.line.slice(0, 2 * solverMoves);
    return evidence.line[0] === node.move ? evidence.line.slice(1, 2 * solverMoves) : [];
  }
  return mateLine(facts, walk, row);
}

function publishedRest({ published }: PuzzleFacts, node: TreeNode): readonly Uci[] {
  const moves = movesTo(node);
  const line = published.lines.find((one) => moves.every((move, at) => one.moves[at] === move));
  return line?.moves.slice(moves.length) ?? [];
}

function mateLine(facts: PuzzleFacts, walk: Walk, last: BookRow): Uci[] {
  const moves: Uci[] = [];
  let node: TreeNode | null = walk.node;
  let row: BookRow | null = last;
  while (node !== null && row !== null) {
    if (node.ply % 2 === 1) {
      const reply: Uci | undefined = row.adequate[0];
      node = reply === undefined ? null : facts.tree.play(node, reply);
      if (node === null || reply === undefined) break;
      moves.push(reply);
    }
    const next: { move: Uci; row: BookRow | null } | null = bestMove(facts, node);
    if (next === null) {
      // A reply that nobody answers explains nothing.
      if (moves.length % 2 === 1 && walk.node.ply % 2 === 1) moves.pop();
      break;
    }
    moves.push(next.move);
    node = facts.tree.play(node, next.move);
    row = next.row;
  }
  return moves;
}

function bestMove(facts: PuzzleFacts, node: TreeNode): { move: Uci; row: BookRow | null } | null {
  const mates = facts.tree.moves(node).filter((move) => facts.tree.play(node, move)?.end === 'checkmate');
  // Where any man mates, nobody makes a bishop.
  const mate = mates.find((move) => move.length < 5 || move.endsWith('q')) ?? mates[0];
  if (mate !== undefined) return { move: mate, row: null };
  const [row] = facts.book
    .rowsAt(node.bookPosition, movesLeftAt(facts.terms, node))
    .filter(({ verdict }) => verdict === 'holds')
    .sort((a, b) => (a.mateIn ?? 99) - (b.mateIn ?? 99) || (a.move < b.move ? -1 : 1));
  return row === undefined ? null : { move: row.move, row };
}
