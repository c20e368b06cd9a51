// What a reading is: a tree of legal moves from the puzzle's position, with the characters that
// became each move (rules R1 to R16). Data only.

import type { Uci } from '#lib/rules/move.ts';

/** Who plays a move of the reading. */
export type By = 'solver' | 'defender';

/** How one move was read off the text. */
export interface ReadMove {
  readonly uci: Uci;
  readonly by: By;
  /** Half-open range of UTF-16 units of the original text that became this move. */
  readonly start: number;
  readonly end: number;
  /** Read with one typing slip mended (rule R13). */
  readonly isTypo: boolean;
}

/**
 * A line of moves from the puzzle's position. Two solver moves in a row mean a gap: the defender's
 * reply between them was not written (rule R4), and the second is legal after at least one reply.
 */
export type ReadLine = readonly ReadMove[];

/** One way to take a text. */
export interface Reading {
  /** The main line up to the first move that cannot be played. */
  readonly line: ReadLine;
  /** Branches at a defender's move (rule R5), each written out from the puzzle's position. */
  readonly branches: readonly ReadLine[];
  /** Choices: another solver move for a position of the main line, neither taken back (rule O4). Each from the root. */
  readonly choices: readonly ReadLine[];
  /** Lines that the writer turned down (rule R10): shown, never judged. Each from the root. */
  readonly tries: readonly ReadLine[];
  /** Ply (half-moves from 1, gaps not counted) of the first written move that cannot be played; null where none. */
  readonly impossibleAt: number | null;
  /** The characters of that move. */
  readonly impossibleSpan: readonly [number, number] | null;
  /** A text of two or more moves without any reply (rule R4). */
  readonly isSolverOnly: boolean;
  /** A reply that cannot be played was treated as a gap (rule R12), a slip of one sign was joined (rule R6). */
  readonly isGenerous: boolean;
}

/** What a text is, and every reading that survives, in an order blind to merit (rule R6). */
export interface ReadResult {
  readonly kind: 'answer' | 'unreadable' | 'chatter';
  readonly readings: readonly Reading[];
  /** The text was cut at 4,000 characters (rule R7). */
  readonly isCut: boolean;
  /** The text ends in its source's cut mark (rule R16). */
  readonly isCutBySource: boolean;
  /** The text begins by addressing somebody, or is "same as ..." (rule P4). */
  readonly isAddressed: boolean;
  /** Rule R14: no move is legal as written, but the whole text turned by 180 degrees reads so. */
  readonly turned: readonly Reading[];
  /** Where an unreadable text went wrong: the first characters that look like a move and are none. */
  readonly firstUnread: readonly [number, number] | null;
  readonly readerVersion: number;
}
