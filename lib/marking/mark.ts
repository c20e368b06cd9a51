// A mark: outcome, flags, points and the reason, as data (rules O0 to O4, P1).

import type { VerdictWord } from '#lib/engine/verdict.ts';
import type { ReadLine } from '#lib/reading/reading.ts';
import type { Uci } from '#lib/rules/move.ts';

/** The ten outcomes, best known first by their order in rule O0. */
export type Outcome =
  | 'solved'
  | 'slower'
  | 'unfinished'
  | 'slipped'
  | 'wrong'
  | 'impossible'
  | 'ambiguous'
  | 'unclear'
  | 'unreadable'
  | 'chatter';

/** Flags beside the outcome. The last four are given by intake, not by marking. */
export type Flag =
  | 'other-way'
  | 'generous'
  | 'typo'
  | 'solver-only'
  | 'weak-defence'
  | 'past-the-end'
  | 'still-winning'
  | 'found-both'
  | 'cut-by-source'
  | 'benefit-of-doubt'
  | 'late'
  | 'time-uncertain'
  | 'edited'
  | 'edited-unseen';

/** The verdict on one written solver move of the line taken. */
export interface MarkedMove {
  readonly uci: Uci;
  readonly verdict: VerdictWord;
  readonly mateIn: number | null;
  readonly value: number | null;
  /** The refuting reply where it slips; null where none is needed. */
  readonly by: Uci | null;
  /** Counts as holding because it was left unclear at the reveal (rule V8); left out otherwise. */
  readonly isBenefit?: true;
}

/** Why the mark is what it is: a code with parameters, written out in the reader's language when shown. */
export interface MarkReason {
  readonly code: string;
  readonly params: Readonly<Record<string, string | number | readonly Uci[] | null>>;
}

/** A mark, before it is stored. */
export interface Mark {
  readonly outcome: Outcome;
  readonly flags: readonly Flag[];
  readonly points: number;
  readonly p: number;
  readonly r: number;
  /** Solver move (from 1) at which it slips or cannot be played; null where it does neither. */
  readonly atMove: number | null;
  /** The line taken, as written, filled at gaps; null where there is none. */
  readonly line: readonly Uci[] | null;
  /** The same with places in the text; filled replies are not in it. */
  readonly reading: ReadLine | null;
  readonly verdicts: readonly MarkedMove[];
  readonly reason: MarkReason;
  /** Name of the marking scheme (rule P1). */
  readonly scheme: string;
  readonly schemeVersion: number;
  readonly readerVersion: number;
  readonly engineVersion: string | null;
}
