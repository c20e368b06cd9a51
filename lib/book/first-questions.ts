// What has to be verified before a puzzle is published? Every first move; along published lines every solver
// move with its duals (rule V9); after each key as much as the main answers need.

import type { BookRow } from './book-row.ts';
import { movesLeftAtStart } from './claim.ts';
import type { PositionTree, TreeNode } from './position-tree.ts';
import type { PublishedLines } from './published-lines.ts';
import { askAll, type Question, verifiedFen } from './question.ts';
import type { SolutionBook } from './solution-book.ts';
import type { PuzzleTerms } from './terms.ts';

/** What the questions are about. */
export interface PuzzleToVerify {
  readonly terms: PuzzleTerms;
  readonly book: SolutionBook;
  readonly tree: PositionTree;
  readonly published: PublishedLines;
}

/** Positions after keys that are looked at before publication; the rest is verified on demand. */
export const MOST_POSITIONS = 60;
/** Up to so many solver moves left, every move of a position after a key is judged; beyond, the proof's move. */
const ALL_MOVES_UP_TO = 3;
const MOST_REPLIES = 6;
const MOST_WIN_MOVES = 6;

/**
 * The next questions for the book as it is, none twice; empty when a puzzle is ready. Ask them in any order or
 * at once, add the rows, call again: each call goes one move deeper.
 */
export function firstQuestions(puzzle: PuzzleToVerify): Question[] {
  const { terms, book, tree } = puzzle;
  const first = askAll(tree.root.position, movesLeftAtStart(terms), book);
  if (first !== null) return [first];
  const questions = [
    ...puzzle.published.lines.flatMap((line) => alongPublished(puzzle, line.moves)),
    ...(terms.task.kind === 'mate' ? afterKeys(puzzle) : alongBest(puzzle)),
  ];
  const places = new Set<string>();
  return questions.filter(({ position, movesLeft, moves }) => {
    const place = `${position}|${movesLeft}|${moves.join()}`;
    return !places.has(place) && places.add(place);
  });
}

function leftAt(terms: PuzzleTerms, node: TreeNode): number | null {
  return terms.task.kind === 'mate' ? terms.task.moves - (node.ply >> 1) : null;
}

function rowOf({ terms, book }: PuzzleToVerify, node: TreeNode, move: string): BookRow | null {
  return book.find({ position: node.bookPosition, movesLeft: leftAt(terms, node), move });
}

// As far as the line holds: nothing is asked behind a slip.
function alongPublished(puzzle: PuzzleToVerify, moves: readonly string[]): Question[] {
  const { terms, book, tree } = puzzle;
  let node: TreeNode | null = tree.root;
  for (const [ply, move] of moves.entries()) {
    if (node === null) break;
    const next: TreeNode | null = tree.play(node, move);
    if (ply % 2 === 0) {
      const left = leftAt(terms, node);
      if (left !== null && left < 1) break;
      const question = askAll(node.position, left, book);
      if (question !== null) return [question];
      const verdict = rowOf(puzzle, node, move)?.verdict;
      if (verdict !== 'holds' && verdict !== 'slower') break;
    }
    node = next;
  }
  return [];
}

function isFinished(terms: PuzzleTerms, row: BookRow): boolean {
  return row.mateIn !== null && row.mateIn <= (terms.mateWritten ? 1 : 2);
}

// Breadth first, so that the bound cuts off the deepest positions.
function afterKeys(puzzle: PuzzleToVerify): Question[] {
  const { terms, book, tree } = puzzle;
  const questions: Question[] = [];
  let layer: TreeNode[] = [tree.root];
  let positions = 0;
  while (layer.length > 0 && positions < MOST_POSITIONS) {
    const next: TreeNode[] = [];
    for (const node of layer) {
      for (const row of book.rowsAt(node.bookPosition, leftAt(terms, node))) {
        if (row.verdict !== 'holds' || isFinished(terms, row)) continue;
        const after = tree.play(node, row.move);
        for (const reply of after === null ? [] : repliesOf(row)) {
          const at = after === null ? null : tree.play(after, reply);
          if (at === null || positions >= MOST_POSITIONS) continue;
          positions += 1;
          const question = questionAfter(puzzle, at, row, reply);
          if (question !== null) questions.push(question);
          else next.push(at);
        }
      }
    }
    layer = next;
  }
  return questions;
}

function repliesOf(row: BookRow): readonly string[] {
  return row.adequate.slice(0, MOST_REPLIES);
}

function questionAfter(puzzle: PuzzleToVerify, node: TreeNode, row: BookRow, reply: string): Question | null {
  const { terms, book } = puzzle;
  const movesLeft = leftAt(terms, node);
  if (movesLeft === null || movesLeft < 1) return null;
  if (movesLeft <= ALL_MOVES_UP_TO) return askAll(node.position, movesLeft, book);
  const proof = row.evidence.kind === 'proof' ? row.evidence.proof : null;
  const move = proof?.nodes[proof.nodes[0]?.replies[reply] ?? -1]?.move;
  if (move === undefined || rowOf(puzzle, node, move) !== null) return null;
  return { fen: verifiedFen(node.bookPosition), position: node.bookPosition, movesLeft, moves: [move] };
}

// Win and draw tasks: the engine's own line after the best first move, up to where it is evident, so that the
// number of moves needed is known.
function alongBest(puzzle: PuzzleToVerify): Question[] {
  const { terms, book, tree, published } = puzzle;
  if (published.lines.length > 0 || terms.solverMoves !== null) return [];
  const best = [...book.rowsAt(tree.root.bookPosition, null)]
    .filter(({ verdict }) => verdict === 'holds')
    .sort((a, b) => worth(b) - worth(a) || (a.move < b.move ? -1 : 1))[0];
  let row: BookRow | null = best ?? null;
  let node: TreeNode = tree.root;
  for (let number = 1; row !== null && row.evident !== true && number < MOST_WIN_MOVES; number += 1) {
    const after = tree.play(node, row.move);
    const reply: string | undefined = row.adequate[0];
    const at = after === null || reply === undefined ? null : tree.play(after, reply);
    const move: string | undefined =
      at === null ? undefined : bestMoveAfter(row, reply, book.rowsAt(at.bookPosition, null));
    if (at === null || move === undefined) return [];
    const known = rowOf(puzzle, at, move);
    if (known === null) {
      return [
        { fen: verifiedFen(at.bookPosition), position: at.bookPosition, movesLeft: null, moves: [move] },
      ];
    }
    row = known.verdict === 'holds' ? known : null;
    node = at;
  }
  return [];
}

function bestMoveAfter(
  row: BookRow,
  reply: string | undefined,
  known: readonly BookRow[],
): string | undefined {
  const { evidence } = row;
  const line = evidence.kind === 'search' || evidence.kind === 'table' ? evidence.line : [];
  if (line[0] === reply && line[1] !== undefined) return line[1];
  return known.find(({ verdict }) => verdict === 'holds')?.move;
}

function worth({ mateIn, value }: BookRow): number {
  return mateIn !== null ? 100_000 - mateIn : (value ?? 50_000);
}
