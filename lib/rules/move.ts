// A move as the rules see it: from where, to where, by whom, and what is special about it.

import type { Kind, Square } from './position.ts';

/** A legal move. Castling is the king's move of two squares, as in UCI. */
export interface Move {
  readonly from: Square;
  readonly to: Square;
  readonly kind: Kind;
  /** The kind taken, en passant included; null for a quiet move. */
  readonly captured: Kind | null;
  readonly promotion: Kind | null;
  readonly castle: 'short' | 'long' | null;
  readonly isEnPassant: boolean;
}

/** A move in the coordinate form of the UCI protocol: `e2e4`, `e1g1`, `a7a8q`. */
export type Uci = string;
