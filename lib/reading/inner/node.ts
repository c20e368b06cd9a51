// The tree that grows while a text is read: nodes with the positions they may stand for, and the moves that
// a token gives at a node, directly or across a gap (rule R4).

import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Move, Uci } from '#lib/rules/move.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position, Side, Square } from '#lib/rules/position.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { type Match, matchToken } from '../match-token.ts';
import type { By } from '../reading.ts';
import type { Shape } from '../shape.ts';

/** What the writer put to a move, in signs or words. */
export interface Marks {
  /** A "?" behind it. */
  readonly isQuestioned: boolean;
  readonly isExclaimed: boolean;
  /** Announced as a threat or an idea (rule R10). */
  readonly isThreat: boolean;
  /** Comes with a "but". */
  readonly isObjection: boolean;
  /** Comes with an "or". */
  readonly isAlternative: boolean;
  /** Comes with an "if". */
  readonly isConditional: boolean;
}

/** A move that is only written. */
export const PLAIN: Marks = {
  isQuestioned: false,
  isExclaimed: false,
  isThreat: false,
  isObjection: false,
  isAlternative: false,
  isConditional: false,
};

/** A move of a reading, or the root. */
export interface Node extends Marks {
  readonly parent: Node | null;
  /** What the board may look like: one position, several behind a gap. */
  readonly positions: readonly Position[];
  readonly uci: Uci;
  readonly by: By;
  readonly lastTo: Square;
  readonly start: number;
  readonly end: number;
  readonly isTypo: boolean;
  /** Written plies up to here, gaps not counted. */
  readonly written: number;
  /** Solver moves up to here. */
  readonly solverMoves: number;
  /** A defender's move stands before it unwritten. */
  readonly followsGap: boolean;
}

/** Counts what a reading costs; when it is spent, nothing new is tried (rule R7). */
export interface Budget {
  left: number;
}

/** A move that a token can mean at a node. */
export interface Landing {
  readonly match: Match;
  readonly uci: Uci;
  readonly positions: Position[];
}

/** Positions kept behind a gap; enough to tell which moves may follow, few enough to be quick. */
const MOST_POSITIONS = 24;

/** The root of all readings of a text. */
export function rootOf(position: Position): Node {
  return {
    parent: null,
    positions: [position],
    uci: '',
    by: 'defender',
    lastTo: -1,
    start: 0,
    end: 0,
    isTypo: false,
    ...PLAIN,
    written: 0,
    solverMoves: 0,
    followsGap: false,
  };
}

/** Whose move it is at a node. */
export function turnAt(node: Node): Side {
  return node.positions[0]?.turn ?? 'w';
}

/** The legal moves that the shapes can mean at the node, each once. */
export function landings(
  node: Node,
  shapes: readonly Shape[],
  budget: Budget,
  mostPositions = MOST_POSITIONS,
): Landing[] {
  const found: Landing[] = [];
  let looked = 0;
  for (const position of node.positions) {
    looked += 1;
    if (looked > mostPositions) break;
    budget.left -= stepsOf(shapes);
    for (const match of matchToken(position, shapes, node.lastTo)) addLanding(found, position, match);
  }
  return found;
}

function addLanding(found: Landing[], position: Position, match: Match): void {
  const uci = writeUci(match.move);
  const same = found.find((landing) => landing.uci === uci);
  if (same === undefined) found.push({ match, uci, positions: [playMove(position, match.move)] });
  else if (same.positions.length < MOST_POSITIONS) same.positions.push(playMove(position, match.move));
}

/** A shape with one goal costs a step; one without is compared with all legal moves. */
function stepsOf(shapes: readonly Shape[]): number {
  let steps = 0;
  for (const shape of shapes) steps += shape.to >= 0 ? 1 : 6;
  return steps;
}

/** The same across a missing reply: moves of the side that is not to move, legal after at least one reply. */
export function landingsAfterGap(node: Node, shapes: readonly Shape[], budget: Budget): Landing[] {
  const found: Landing[] = [];
  const replies = repliesOf(node);
  const stride = Math.max(
    1,
    Math.ceil((replies.length * shapes.length) / Math.max(1, Math.min(2000, budget.left / 8))),
  );
  for (let index = 0; index < replies.length; index += stride) {
    const reply = replies[index];
    if (reply === undefined) continue;
    budget.left -= 1 + stepsOf(shapes);
    const after = playMove(reply.position, reply.move);
    for (const match of matchToken(after, shapes, reply.move.to)) addLanding(found, after, match);
  }
  return found;
}

/** All replies at the node, those of different positions interleaved so that few of them still differ. */
function repliesOf(node: Node): { readonly position: Position; readonly move: Move }[] {
  const lists = node.positions.map((position) => ({ position, moves: legalMoves(position) }));
  const longest = Math.max(0, ...lists.map(({ moves }) => moves.length));
  const replies: { position: Position; move: Move }[] = [];
  for (let index = 0; index < longest; index += 1) {
    for (const { position, moves } of lists) {
      const move = moves[index];
      if (move !== undefined) replies.push({ position, move });
    }
  }
  return replies;
}

/** True where at least one legal move exists at the node. */
export function hasReply(node: Node): boolean {
  return node.positions.some((position) => legalMoves(position).length > 0);
}

/** A new node for a landing. */
export function childOf(
  parent: Node,
  landing: Landing,
  token: Marks & {
    readonly start: number;
    readonly end: number;
    readonly isTypo: boolean;
    readonly followsGap: boolean;
  },
): Node {
  const isSolver = (parent.by === 'defender') !== token.followsGap;
  return {
    parent,
    positions: landing.positions,
    uci: landing.uci,
    by: isSolver ? 'solver' : 'defender',
    lastTo: landing.match.move.to,
    ...token,
    written: parent.written + 1,
    solverMoves: parent.solverMoves + (isSolver ? 1 : 0),
  };
}

/** The nodes from the root (left out) to the node. */
export function pathTo(node: Node): Node[] {
  const path: Node[] = [];
  for (let at: Node | null = node; at?.parent != null; at = at.parent) path.push(at);
  return path.reverse();
}

/** The child of `ancestor` on the way to `node`, or null where it does not lie on the way. */
export function childTowards(ancestor: Node, node: Node): Node | null {
  for (let at: Node | null = node; at !== null; at = at.parent) if (at.parent === ancestor) return at;
  return null;
}
