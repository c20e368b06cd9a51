// Does a proof graph prove its mate? Rule T1: replayed with another rules library and nothing of ours, within
// a bound of positions.

import { type MoveFault, openReplayBoard, type ReplayBoard } from './inner/replay-board.ts';
import type { CheckStatus, Proof, ProofNode } from './proof.ts';

/** What is wrong with a proof. */
export type ProofFaultCode =
  /** The FEN cannot be played. */
  | 'bad-position'
  | MoveFault
  /** A legal reply is not answered. */
  | 'missing-defence'
  /** A node without replies, after whose move the game goes on. */
  | 'no-mate-at-leaf'
  | 'stalemate-at-leaf'
  /** A reply leads back to a node on the way to it: such a line never ends. */
  | 'repetition'
  /** Fifty moves go by without a capture or a pawn's move before the mate (rule V5). */
  | 'fifty-moves'
  /** Some defence lasts longer than the stated number of moves. */
  | 'wrong-move-count'
  /** A reply leads to a node that is not there. */
  | 'truncated'
  /** A reply leads to a node that stands for another position. */
  | 'wrong-position';

/** A fault with its place. */
export interface ProofFault {
  readonly code: ProofFaultCode;
  /** Index of the node. */
  readonly node: number;
  /** The moves from the start position to the place, the offending move excluded. */
  readonly path: readonly string[];
  /** The offending or missing move, or null where none is named. */
  readonly move: string | null;
}

/** How a proof stands; `positions` is the number that were played through. */
export interface ProofCheck {
  readonly status: CheckStatus;
  readonly reason: ProofFault | null;
  readonly positions: number;
}

/** Rule T1. */
export const MOST_POSITIONS = 200_000;

/** The state of one check; lives for one call. */
interface Replay {
  readonly proof: Proof;
  readonly board: ReplayBoard;
  readonly maxPositions: number;
  readonly path: string[];
  readonly nodesOnPath: Set<number>;
  readonly keyOfNode: Map<number, string>;
  /** Solver moves to mate from a node that was found sound. */
  readonly heights: Map<number, number>;
}

type Outcome =
  | { readonly kind: 'sound'; readonly height: number }
  | { readonly kind: 'fault'; readonly fault: ProofFault }
  | { readonly kind: 'too-large' };

const TOO_LARGE: Outcome = { kind: 'too-large' };

/**
 * Replays every line of the graph, each node once. `passed` means: node 0 forces mate in at most `n` solver
 * moves against every legal reply. A position may come again under another node, as where a slow first
 * move is taken back: the count of moves still ends the line. `too-large` means that more than `maxPositions` (200,000) would have to be
 * played; nothing was found wrong up to there. About 30,000 positions a second.
 */
export function checkProof(proof: Proof, options: { readonly maxPositions?: number } = {}): ProofCheck {
  const board = openReplayBoard(proof.fen);
  if (board === null) {
    const reason: ProofFault = { code: 'bad-position', node: 0, path: [], move: null };
    return { status: 'failed', reason, positions: 0 };
  }
  const replay: Replay = {
    proof,
    board,
    maxPositions: options.maxPositions ?? MOST_POSITIONS,
    path: [],
    nodesOnPath: new Set(),
    keyOfNode: new Map(),
    heights: new Map(),
  };
  const outcome = visit(replay, 0, 1);
  const positions = board.positions();
  if (outcome.kind === 'fault') return { status: 'failed', reason: outcome.fault, positions };
  return { status: outcome.kind === 'sound' ? 'passed' : 'too-large', reason: null, positions };
}

/** Checks a node with the board at its position; `depth` is the number of its solver move on this path. */
function visit(replay: Replay, index: number, depth: number): Outcome {
  const { proof, board, nodesOnPath, keyOfNode, heights } = replay;
  const node = proof.nodes[index];
  if (node === undefined) return fault(replay, 'truncated', index);
  if (depth > 1 && board.isDrawnByClock()) return fault(replay, 'fifty-moves', index);
  const key = board.key();
  if ((keyOfNode.get(index) ?? key) !== key) return fault(replay, 'wrong-position', index);
  keyOfNode.set(index, key);
  if (nodesOnPath.has(index)) return fault(replay, 'repetition', index);
  const known = heights.get(index);
  if (depth - 1 + (known ?? 1) > proof.n) return fault(replay, 'wrong-move-count', index);
  if (known !== undefined) return { kind: 'sound', height: known };
  nodesOnPath.add(index);
  const outcome = playSolver(replay, index, depth);
  nodesOnPath.delete(index);
  if (outcome.kind === 'sound') heights.set(index, outcome.height);
  return outcome;
}

function playSolver(replay: Replay, index: number, depth: number): Outcome {
  const { proof, board, path } = replay;
  const node = proof.nodes[index];
  if (node === undefined) throw new Error(`No node ${index}`);
  const move = board.legalMoves().find(({ uci }) => uci === node.move);
  if (move === undefined) return fault(replay, board.whyNot(node.move), index, node.move);
  if (board.positions() >= replay.maxPositions) return TOO_LARGE;
  board.play(move);
  path.push(node.move);
  const outcome = answerReplies(replay, index, { node, depth });
  if (outcome.kind !== 'fault') path.pop();
  board.back();
  return outcome;
}

function answerReplies(
  replay: Replay,
  index: number,
  { node, depth }: { readonly node: ProofNode; readonly depth: number },
): Outcome {
  const { board, path } = replay;
  const legal = board.legalMoves();
  const given = Object.entries(node.replies);
  if (given.length === 0) {
    if (legal.length > 0) return fault(replay, 'no-mate-at-leaf', index);
    return board.isCheck() ? { kind: 'sound', height: 1 } : fault(replay, 'stalemate-at-leaf', index);
  }
  if (board.isDrawnByClock()) return fault(replay, 'fifty-moves', index);
  for (const [uci] of given) {
    if (!legal.some((move) => move.uci === uci)) return fault(replay, board.whyNot(uci), index, uci);
  }
  const missing = legal.find(({ uci }) => node.replies[uci] === undefined);
  if (missing !== undefined) return fault(replay, 'missing-defence', index, missing.uci);
  let height = 0;
  for (const reply of legal) {
    if (board.positions() >= replay.maxPositions) return TOO_LARGE;
    board.play(reply);
    path.push(reply.uci);
    const outcome = visit(replay, node.replies[reply.uci] ?? -1, depth + 1);
    board.back();
    if (outcome.kind !== 'sound') return outcome;
    path.pop();
    height = Math.max(height, outcome.height);
  }
  return { kind: 'sound', height: height + 1 };
}

function fault({ path }: Replay, code: ProofFaultCode, node: number, move: string | null = null): Outcome {
  return { kind: 'fault', fault: { code, node, path: [...path], move } };
}
