// Which calls do evaluation and search answer? The signatures of lib/engine/kernel/root.ts.

/** Booleans travel as 0 and 1; values are centipawns from the side to move of the loaded position. */
export interface SearchCalls {
  /** Address of 32 KiB for the bits of king and pawn against king. */
  pawnEndingBits(): number;
  /** Every table of the search fresh; before the first `searchDepth` of a position. */
  beginSearch(): void;
  /** Leaves a root move out, in the kernel's writing. */
  leaveOut(move: number): void;
  /** All root moves count again. */
  leaveNoneOut(): void;
  /** 1 where the depth was completed, 0 where nodes or patience ran out. */
  searchDepth(depth: number): number;
  /** Of the last completed depth. */
  searchValue(): number;
  /** Writes the principal line to OUTPUT; returns its length. Read it after each completed depth. */
  searchLine(): number;
  /** The value around which the next depth looks first; for several positions searched in turn. */
  aimAt(value: number): void;
  /** 1 where the exchange that the move begins brings its side at least so many centipawns. */
  exchangeBrings(move: number, centipawns: number): number;
  quiescentValue(): number;
  staticValue(): number;
}

/** From here on a value is a mate; 30000 less the plies to it. */
export const MATE_VALUE = 30_000;
export const MATE_FROM = 29_000;
