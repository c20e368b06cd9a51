// One row of the solution book: a verdict on one move in one position, with its evidence.

import type { CheckStatus } from '#lib/checker/proof.ts';
import type { MoveVerdict } from '#lib/engine/verdict.ts';
import type { Uci } from '#lib/rules/move.ts';

/** Where in the book a verdict lies: first four FEN fields (with the clock from 80 on, rule V5), moves left in mate tasks. */
export interface BookKey {
  readonly position: string;
  readonly movesLeft: number | null;
  readonly move: Uci;
}

/** A verdict as the book keeps it. */
export interface BookRow extends BookKey, MoveVerdict {
  readonly check: CheckStatus | 'not-checkable';
  readonly engineVersion: string;
}

/** A host's ruling on an unclear verdict; it belongs to the move in the position (rule V8). */
export interface Ruling extends BookKey {
  readonly verdict: 'holds' | 'slips';
  readonly reason: string;
}

/** A verdict that marking needs and the book lacks. `fen` is the full position to verify. */
export interface Lacking extends BookKey {
  readonly fen: string;
}

/** The same, asked for under one revision of the puzzle's terms (rule A6). */
export interface Wanted extends Lacking {
  readonly revision: number;
}
