// One mate question: a position, its legal first moves, a budget for each, and who may interrupt.

import type { Uci } from '#lib/rules/move.ts';
import type { Position } from '#lib/rules/position.ts';
import { type Engine, loadFen } from '../create-engine.ts';
import { listLegal, uciOf } from '../kernel-moves.ts';
import type { EngineProgress } from '../verdict.ts';

/** Patience of the caller: asked before each first move and every 32,768 nodes. */
export interface Patience {
  readonly shouldStop?: (() => boolean) | undefined;
  readonly onProgress?: ((progress: EngineProgress) => void) | undefined;
}

/** What is known of a first move. `by` is null where the move itself stalemates or draws. */
export interface FirstMove {
  readonly move: number;
  readonly uci: Uci;
  usedNodes: number;
  /** Solver moves to mate, this one included; null while not proved. */
  mateIn: number | null;
  /** So many moves are proved not to be enough. */
  disproved: number;
  by: Uci | null;
  state: 'open' | 'mates' | 'out-of-budget';
}

/** A position on the kernel's board with a fresh table (rule V0), and its first moves in UCI order. */
export interface MateQuestion {
  readonly engine: Engine;
  readonly fen: string;
  readonly position: Position;
  readonly proofNodes: number;
  readonly patience: Patience;
  readonly firstMoves: readonly FirstMove[];
  progress: EngineProgress;
  nodes: number;
  wasStopped: boolean;
}

/** Begins a question. What the kernel knew before is forgotten. */
export function askMate(
  engine: Engine,
  fen: string,
  { proofNodes, ...patience }: { readonly proofNodes: number } & Patience,
): MateQuestion {
  const position = loadFen(engine, fen);
  engine.calls.beginMateQuestion();
  const firstMoves = listLegal(engine).map(
    ({ move, uci }): FirstMove => ({
      move,
      uci,
      usedNodes: 0,
      mateIn: null,
      disproved: 0,
      by: null,
      state: 'open',
    }),
  );
  const progress: EngineProgress = { stage: 'keys', done: 0, total: firstMoves.length, nodes: 0 };
  return { engine, fen, position, proofNodes, patience, firstMoves, progress, nodes: 0, wasStopped: false };
}

/** Tells how far the question is. */
export function report(question: MateQuestion, next: Partial<EngineProgress>): void {
  question.progress = { ...question.progress, ...next, nodes: question.nodes };
  question.patience.onProgress?.(question.progress);
}

/** Runs a kernel call under a budget of nodes; counts them, passes progress on, and listens for a stop. */
export function runWithin<T>(
  question: MateQuestion,
  limit: number,
  call: () => T,
): { value: T; nodes: number } {
  const { engine, patience } = question;
  engine.calls.startNodes(BigInt(Math.max(1, limit)));
  engine.onPoll = (nodes) => {
    patience.onProgress?.({ ...question.progress, nodes: question.nodes + nodes });
    return patience.shouldStop?.() ?? false;
  };
  try {
    const value = call();
    const nodes = Number(engine.calls.nodesSoFar());
    question.nodes += nodes;
    if (engine.calls.stopReason() === 2) question.wasStopped = true;
    return { value, nodes };
  } finally {
    engine.onPoll = null;
  }
}

/**
 * Does this first move force mate in at most `moves`? Answers from what is known, else asks the kernel
 * within what is left of the move's budget. `null`: out of budget, or stopped.
 */
export function firstMoveMates(question: MateQuestion, first: FirstMove, moves: number): boolean | null {
  if (first.mateIn !== null && first.mateIn <= moves) return true;
  if (first.disproved >= moves) return false;
  // Many short searches in a row never reach the kernel's own look at the caller's patience.
  if (question.patience.shouldStop?.()) question.wasStopped = true;
  if (question.wasStopped) return null;
  const left = question.proofNodes - first.usedNodes;
  const { calls } = question.engine;
  if (left > 0) {
    const { value, nodes } = runWithin(question, left, () => calls.movesMate(first.move, moves));
    if (question.wasStopped) return null;
    first.usedNodes += nodes;
    if (value === 1) {
      first.mateIn = moves;
      first.state = 'mates';
      return true;
    }
    if (value === 0) {
      first.disproved = moves;
      first.by = uciOf(calls.refutingReply());
      return false;
    }
  }
  first.state = 'out-of-budget';
  return null;
}

/** Asks for one move more and one move more, so that the length found is the shortest; stops at the first that mates. */
export function deepenFirstMove(question: MateQuestion, first: FirstMove, moves: number): boolean | null {
  for (let n = Math.min(first.disproved + 1, moves); n <= moves; n += 1) {
    const mates = firstMoveMates(question, first, n);
    if (mates !== false) return mates;
  }
  return false;
}
