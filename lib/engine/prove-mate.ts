// Which first moves force mate in N? Rule V1: exact, by exhaustive search; every legal first move is
// a key, slower, refuted, or (out of budget or interrupted) unfinished, never a guess.

import type { Proof } from '#lib/checker/proof.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { Engine } from './create-engine.ts';
import { buildProof } from './inner/build-proof.ts';
import {
  askMate,
  type FirstMove,
  firstMoveMates,
  type MateQuestion,
  type Patience,
  report,
} from './inner/mate-question.ts';
import { namedRefutation } from './inner/name-refutation.ts';

/** Every legal first move stands in exactly one of the lists, each in UCI order. */
export interface MateReport {
  readonly holds: boolean;
  /** The shortest forced mate, if at most N. */
  readonly mateIn: number | null;
  readonly keys: readonly { readonly uci: Uci; readonly mateIn: number }[];
  /** Mate in exactly N + 1 is forced; empty where that was not asked. */
  readonly slower: readonly { readonly uci: Uci; readonly mateIn: number }[];
  /** `by` refutes: after it no mate follows in the moves left; null where the move itself stalemates or draws. */
  readonly refuted: readonly { readonly uci: Uci; readonly by: Uci | null }[];
  /** Moves made in the search. */
  readonly nodes: number;
  /** Of the first of the shortest keys, if asked and within the checker's bound of 200,000 nodes. */
  readonly proof: Proof | null;
  readonly isComplete: boolean;
  /** Out of budget, or not reached before the interruption. */
  readonly unfinished: readonly Uci[];
}

/**
 * Classifies every legal first move for mate in `moves`. `proofNodes` is the budget of one first move;
 * the table is shared between first moves and fresh for each call (rule V0). Out of budget only for
 * the question of one move more, a move counts as refuted (rule V1).
 */
export function proveMate(
  engine: Engine,
  {
    fen,
    moves,
    proofNodes,
    withSlower,
    withProof,
    ...patience
  }: {
    readonly fen: string;
    readonly moves: number;
    readonly proofNodes: number;
    readonly withSlower: boolean;
    readonly withProof: boolean;
  } & Patience,
): MateReport {
  const question = askMate(engine, fen, { proofNodes, ...patience });
  for (let n = 1; n <= moves; n += 1) askAll(question, n, n < moves ? 'keys' : 'refutations');
  const unfinished = question.firstMoves.filter((first) => first.mateIn === null && first.disproved < moves);
  const keys = question.firstMoves.filter((first) => first.mateIn !== null);
  const refuted = question.firstMoves
    .filter((first) => first.mateIn === null && first.disproved >= moves)
    .map((first) => ({ first, by: namedRefutation(question, first) }));
  if (withSlower && !question.wasStopped) askAll(question, moves + 1, 'slower');
  const isSlower = (first: FirstMove) => first.mateIn === moves + 1;
  const shortest = keys.reduce((least, { mateIn }) => Math.min(least, mateIn ?? least), Infinity);
  const best = keys.find(({ mateIn }) => mateIn === shortest);
  return {
    holds: keys.length > 0,
    mateIn: best?.mateIn ?? null,
    keys: keys.map(lengthOf),
    slower: refuted.filter(({ first }) => isSlower(first)).map(({ first }) => lengthOf(first)),
    refuted: refuted.filter(({ first }) => !isSlower(first)).map(({ first, by }) => ({ uci: first.uci, by })),
    nodes: question.nodes,
    proof: withProof && best ? buildProof(question, best) : null,
    isComplete: unfinished.length === 0 && !question.wasStopped,
    unfinished: unfinished.map(({ uci }) => uci),
  };
}

function lengthOf({ uci, mateIn }: FirstMove): { uci: Uci; mateIn: number } {
  if (mateIn === null) throw new Error(`${uci} has no length`);
  return { uci, mateIn };
}

// One length for all first moves before the next length: short mates and easy refutations first.
function askAll(question: MateQuestion, moves: number, stage: 'keys' | 'refutations' | 'slower'): void {
  const open = question.firstMoves.filter(({ mateIn, state }) => mateIn === null && state === 'open');
  report(question, { stage, done: question.firstMoves.length - open.length });
  for (const first of open) {
    if (question.wasStopped) return;
    firstMoveMates(question, first, moves);
    report(question, { done: question.progress.done + 1 });
  }
}
