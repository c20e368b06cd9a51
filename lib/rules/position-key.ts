// When are two positions the same? Rules V5 and V6: transpositions share a verdict; close to the
// fifty-move rule the clock counts too.

import { enPassantCapturers } from './en-passant.ts';
import { type Position, squareName } from './position.ts';
import { writeBoardFields } from './write-fen.ts';

/** From this half-move clock on, a verdict holds for its clock only (rule V5). */
const CLOCK_COUNTS_FROM = 80;

/** The first four FEN fields; the en passant square only if a capture there is legal. */
export function positionKey(position: Position): string {
  const canCapture = enPassantCapturers(position).length > 0;
  return `${writeBoardFields(position)} ${canCapture ? squareName(position.enPassant) : '-'}`;
}

/** The position as the solution book names it: the key, and from a half-move clock of 80 on the clock as well. */
export function bookPosition(position: Position): string {
  const key = positionKey(position);
  return position.halfmoveClock >= CLOCK_COUNTS_FROM ? `${key} ${position.halfmoveClock}` : key;
}
