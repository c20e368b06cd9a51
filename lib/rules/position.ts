// The position: board, side to move, rights and clocks, in a form cheap to copy and to index.

/** A square, 0 to 63: a1 = 0, b1 = 1, ... h8 = 63. */
export type Square = number;

/** A kind of man, in English letters, lower case. */
export type Kind = 'p' | 'n' | 'b' | 'r' | 'q' | 'k';

/** `w` or `b`, as in FEN. */
export type Side = 'w' | 'b';

/**
 * A man on the board as one byte: 0 is an empty square, 1 to 6 White's pawn, knight, bishop, rook,
 * queen, king; 9 to 14 Black's in the same order. `man & 7` is the kind, `man & 8` is Black.
 */
export type Man = number;

/** Castling rights as bits: 1 White short, 2 White long, 4 Black short, 8 Black long. */
export type CastlingRights = number;

/** A position. Never changed in place: `playMove` gives a new one. */
export interface Position {
  readonly board: Uint8Array;
  readonly turn: Side;
  readonly castling: CastlingRights;
  /** The square a pawn has just passed over, as FEN states it, or -1. */
  readonly enPassant: Square;
  /** Plies since the last capture or pawn move. */
  readonly halfmoveClock: number;
  readonly fullmoveNumber: number;
}

export const KINDS: readonly Kind[] = ['p', 'n', 'b', 'r', 'q', 'k'];

/** The byte for a man: `manOf('w', 'n')` is 2, `manOf('b', 'n')` is 10. */
export function manOf(side: Side, kind: Kind): Man {
  return KINDS.indexOf(kind) + 1 + (side === 'b' ? 8 : 0);
}

/** The kind of a man, or null for an empty square. */
export function kindOf(man: Man): Kind | null {
  // An index of -1 would leave the engine's fast path for arrays.
  return man === 0 ? null : (KINDS[(man & 7) - 1] ?? null);
}

/** The side a man belongs to, or null for an empty square. */
export function sideOf(man: Man): Side | null {
  return man === 0 ? null : (man & 8) === 0 ? 'w' : 'b';
}

/** The other side. */
export function otherSide(side: Side): Side {
  return side === 'w' ? 'b' : 'w';
}

/** `e4` for 28. */
export function squareName(square: Square): string {
  return String.fromCharCode(97 + (square & 7)) + String(1 + (square >> 3));
}

/** 28 for `e4`, or null where the text names no square. */
export function parseSquare(text: string): Square | null {
  if (text.length !== 2) return null;
  const file = text.charCodeAt(0) - 97;
  const rank = text.charCodeAt(1) - 49;
  return file >= 0 && file < 8 && rank >= 0 && rank < 8 ? rank * 8 + file : null;
}
