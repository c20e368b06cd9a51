// What the engine says of a move, with its evidence (rules V1 to V4): shapes that book, marking and store share.

import type { Proof } from '#lib/checker/proof.ts';
import type { Uci } from '#lib/rules/move.ts';

/** The four verdicts on a solver move. */
export type VerdictWord = 'holds' | 'slower' | 'slips' | 'unclear';

/** What a move is asked to do. Bounds in centipawns from the solver's side (rules V2, V3). */
export type Claim =
  | { readonly task: 'mate'; readonly movesLeft: number }
  | { readonly task: 'win' | 'draw'; readonly holdBound: number; readonly slipBound: number };

/** Budgets in nodes: `proofNodes` a first move of a mate question, `budgetNodes` a verdict in win and draw. */
export interface Budgets {
  readonly proofNodes: number;
  readonly budgetNodes: number;
}

/** Why a verdict is believed. */
export type Evidence =
  /** Mate tasks, holds and slower, and any mate found on the way in the others. */
  | { readonly kind: 'proof'; readonly proof: Proof }
  /**
   * The same where the graph would be larger than the checker's bound (rule T1): nobody can replay it,
   * so its status is `too-large`. `line` is one way to play it out, longest defences, the move first.
   */
  | { readonly kind: 'large-proof'; readonly mateIn: number; readonly line: readonly Uci[] }
  /**
   * Mate tasks, slips: after `reply` no mate follows in `movesLeft` solver moves. `reply` is null
   * where the move itself stalemates or draws. `line` is one way to play it out, `reply` first.
   */
  | {
      readonly kind: 'refutation';
      readonly reply: Uci | null;
      readonly movesLeft: number;
      readonly line: readonly Uci[];
    }
  /** Win and draw tasks: the principal line after the move. */
  | { readonly kind: 'search'; readonly line: readonly Uci[] }
  /** An exact result of an endgame table; `distance` in solver moves to mate, null where drawn. */
  | {
      readonly kind: 'table';
      readonly material: string;
      readonly distance: number | null;
      readonly line: readonly Uci[];
    }
  /** The budget ran out (unclear). */
  | { readonly kind: 'budget' };

/** One legal reply after a solver move that holds or is slower. */
export interface ReplyValue {
  readonly uci: Uci;
  /** Mate tasks: solver moves to mate after this reply, the shortest way; null where not forced within the bound. */
  readonly mateIn: number | null;
  /** Win and draw: centipawns from the solver's side, mates and table wins as 1000, clipped to +-1000; null in mate tasks. */
  readonly value: number | null;
}

/** The verdict on one solver move in one position. */
export interface MoveVerdict {
  readonly move: Uci;
  readonly verdict: VerdictWord;
  /** Solver moves to mate counting this one (1 is checkmate); exact in mate tasks where holds or slower; else null. */
  readonly mateIn: number | null;
  /** Centipawns from the solver's side in win and draw tasks; null in mate tasks and where exact. */
  readonly value: number | null;
  /** Completed depth in plies; 0 where exact. */
  readonly depth: number;
  readonly nodes: number;
  readonly evidence: Evidence;
  /** Every legal reply where the move holds or is slower, longest lasting or best first; else empty. */
  readonly replies: readonly ReplyValue[];
  /** The adequate replies of rule O2, published lines aside; at most six in win and draw tasks. */
  readonly adequate: readonly Uci[];
  /** Win tasks, where the move holds: is the win evident after it (rule O1)? Draw tasks: an exact draw? Mate tasks: null. */
  readonly evident: boolean | null;
  /** Mate tasks, slips: the position is still clearly won for the solver (flag `still-winning`); else null. */
  readonly stillWinning: boolean | null;
}

/** Progress of a long question; every number comes from the running work. */
export interface EngineProgress {
  readonly stage: 'keys' | 'refutations' | 'slower' | 'search' | 'replies' | 'table';
  readonly done: number;
  readonly total: number;
  readonly nodes: number;
}

/**
 * Win and draw: does this verdict of a first look depend on how the other moves of the position do (rule V2)?
 * What rules or tables settle is exact (rules V3, V4), and what holds, holds.
 */
export function isOpenVerdict({ verdict, depth }: MoveVerdict): boolean {
  return verdict === 'unclear' || (verdict === 'slips' && depth > 0);
}
