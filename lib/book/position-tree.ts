// Which position does a move lead to? The positions of one puzzle as a tree that grows where lines go, so
// that ten thousand answers that begin alike work out their chess once.

import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Uci } from '#lib/rules/move.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { positionEnd } from '#lib/rules/position-end.ts';
import { bookPosition, positionKey } from '#lib/rules/position-key.ts';
import { findUci, writeUci } from '#lib/rules/uci.ts';

/** A position on a line, with the way to it. */
export interface TreeNode {
  readonly position: Position;
  /** The first four FEN fields: two nodes with the same key are a repetition. */
  readonly key: string;
  /** The name of the position in the solution book. */
  readonly bookPosition: string;
  readonly parent: TreeNode | null;
  /** The move that led here; null at the root. */
  readonly move: Uci | null;
  /** Half-moves from the root. */
  readonly ply: number;
  readonly end: 'checkmate' | 'stalemate' | 'insufficient' | 'fifty-moves' | null;
}

/** A tree over one puzzle's position. Its memory is bounded; what it answers does not depend on it. */
export interface PositionTree {
  readonly root: TreeNode;
  /** The node after a move, or null where the move is not legal. */
  play(node: TreeNode, move: Uci): TreeNode | null;
  /** Every legal move at a node, in UCI order. */
  moves(node: TreeNode): readonly Uci[];
}

/** So many nodes are remembered; beyond, the memory starts anew. */
const MOST_NODES = 20_000;
const FIFTY_MOVES = 100;

/** A tree from a FEN; a FEN that cannot be parsed is our own mistake, terms have been checked. */
export function createTree(fen: string): PositionTree {
  const start = parseFen(fen);
  if (!start.ok) throw new Error(`Not a position: ${fen}`);
  const root = createNode(start.value, null, null);
  let children = new WeakMap<TreeNode, Map<Uci, TreeNode | null>>();
  let replies = new WeakMap<TreeNode, readonly Uci[]>();
  let count = 0;

  function remember(node: TreeNode): Map<Uci, TreeNode | null> {
    const known = children.get(node) ?? new Map<Uci, TreeNode | null>();
    if (count > MOST_NODES) {
      children = new WeakMap();
      replies = new WeakMap();
      count = 0;
    }
    children.set(node, known);
    return known;
  }

  return {
    root,
    play(node, move) {
      const known = children.get(node)?.get(move);
      if (known !== undefined) return known;
      const found = findUci(node.position, move);
      const next = found === null ? null : createNode(playMove(node.position, found), node, move);
      remember(node).set(move, next);
      count += 1;
      return next;
    },
    moves(node) {
      const known = replies.get(node);
      if (known !== undefined) return known;
      const moves = legalMoves(node.position).map(writeUci).sort();
      replies.set(node, moves);
      return moves;
    },
  };
}

function createNode(position: Position, parent: TreeNode | null, move: Uci | null): TreeNode {
  return new Place(position, parent, move);
}

/** A node. What is not asked of every node is worked out when first asked: a gap looks at hundreds and goes on from few. */
class Place implements TreeNode {
  readonly position: Position;
  readonly parent: TreeNode | null;
  readonly move: Uci | null;
  readonly ply: number;
  #key: string | null = null;
  #bookPosition: string | null = null;
  #end: TreeNode['end'] | undefined;

  constructor(position: Position, parent: TreeNode | null, move: Uci | null) {
    this.position = position;
    this.parent = parent;
    this.move = move;
    this.ply = parent === null ? 0 : parent.ply + 1;
  }

  get key(): string {
    this.#key ??= positionKey(this.position);
    return this.#key;
  }

  get bookPosition(): string {
    this.#bookPosition ??= bookPosition(this.position);
    return this.#bookPosition;
  }

  get end(): TreeNode['end'] {
    if (this.#end === undefined) {
      const end = positionEnd(this.position);
      this.#end = end === null && this.position.halfmoveClock >= FIFTY_MOVES ? 'fifty-moves' : end;
    }
    return this.#end;
  }
}

/** How often the position of a node occurs on the way to it, itself included (rules O1, V5). */
export function countRepetitions(node: TreeNode): number {
  let count = 1;
  let before = node.parent?.parent ?? null;
  // Behind a capture or a pawn's move nothing can be the same, and nobody is back where he was in less than four plies.
  for (let back = 2; before !== null && back <= node.position.halfmoveClock; back += 2) {
    if (back >= 4 && before.key === node.key) count += 1;
    before = before.parent?.parent ?? null;
  }
  return count;
}

/** The moves from the root to a node. */
export function movesTo(node: TreeNode): Uci[] {
  const moves: Uci[] = [];
  for (let at: TreeNode | null = node; at !== null && at.move !== null; at = at.parent) moves.push(at.move);
  return moves.reverse();
}
