// The shape of the judged cases: what a viewer wrote, and how a fair judge marks it, with the rule.

import type { Flag, Outcome } from '#lib/marking/mark.ts';

/** One answer and its expected mark. */
export interface JudgedCase {
  readonly id: string;
  /** Ids of the marking rules that decide it. */
  readonly rules: readonly string[];
  readonly text: string;
  /** The line the viewer chose when asked (rule R8). */
  readonly meant?: readonly string[];
  readonly outcome: Outcome;
  /** Solver move at which it slips or cannot be played. */
  readonly at?: number;
  /** Every flag, in any order; none where left out. */
  readonly flags?: readonly Flag[];
  readonly p: number;
  readonly r: number;
  readonly points: number;
  readonly why: string;
}

/** A puzzle in the shape of a puzzle file, where it comes from, and its answers. */
export interface JudgedPuzzle {
  readonly name: string;
  /** Composer and year, or "own position". */
  readonly source: string;
  readonly file: Readonly<Record<string, unknown>>;
  readonly strict?: boolean;
  /** The test verifies what its answers ask for and no more; the bench fills the whole book first. */
  readonly isOnDemand?: boolean;
  readonly cases: readonly JudgedCase[];
}
