// Which legal moves can a written token mean in the position reached? Rules R1, R2 and R9: the legal moves
// decide, signs left out or too many do not.

import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Move } from '#lib/rules/move.ts';
import { KIND_BIT, movesTo } from '#lib/rules/moves-to.ts';
import type { Position, Square } from '#lib/rules/position.ts';
import type { Shape } from './shape.ts';

/** A legal move that a token can mean. */
export interface Match {
  readonly move: Move;
  /** Languages in which it does. */
  readonly langs: number;
  /** How far the writing is from the usual. */
  readonly cost: number;
  /** Read by generosity: a sign that should decide is missing (rule R6). */
  readonly isGenerous: boolean;
}

/** Where castling takes the king, and the rooks' corners: a1, c1, g1, h1 and the same on the last rank. */
const CASTLING_GOALS: ReadonlySet<Square> = new Set([0, 2, 6, 7, 56, 58, 62, 63]);

const KING_ON_E = (board: Uint8Array): boolean => board[4] === 6 || board[60] === 14;

/**
 * The legal moves that fit at least one of the shapes, each once, with its best cost. `lastTo` is the
 * square of the last move (for "takes"), -1 where there is none. An empty list: cannot be played here.
 */
export function matchToken(position: Position, shapes: readonly Shape[], lastTo: Square): Match[] {
  const found: Match[] = [];
  for (const shape of shapes) {
    for (const match of matchShape(position, shape, lastTo)) addMatch(found, match);
  }
  return found;
}

function addMatch(found: Match[], match: Match): void {
  const { move } = match;
  for (let index = 0; index < found.length; index += 1) {
    const other = found[index];
    if (other === undefined || other.move.from !== move.from || other.move.to !== move.to) continue;
    if (other.move.promotion !== move.promotion) continue;
    if (match.cost < other.cost) found[index] = match;
    else if (match.cost === other.cost) found[index] = { ...other, langs: other.langs | match.langs };
    return;
  }
  found.push(match);
}

function matchShape(position: Position, shape: Shape, lastTo: Square): Match[] {
  if (shape.castle !== null) {
    return legalMoves(position)
      .filter(({ castle }) => castle !== null && (shape.castle === 'any' || castle === shape.castle))
      .map((move) => ({ move, langs: shape.langs, cost: shape.cost, isGenerous: false }));
  }
  if (shape.toFiles === 0 || shape.toRanks === 0 || shape.promotion === 'k') return [];
  const matches: Match[] = [];
  for (const move of candidates(position, shape)) {
    if (!fits(position, shape, move)) continue;
    const cost = shape.cost + mismatch(shape, move);
    matches.push({ move, langs: shape.langs, cost, isGenerous: shape.cost > 5 });
  }
  return narrowed(matches, shape, lastTo);
}

function candidates(position: Position, shape: Shape): readonly Move[] {
  const isCastlingSquare =
    (shape.kinds & KIND_BIT.k) !== 0 && CASTLING_GOALS.has(shape.to) && KING_ON_E(position.board);
  if (shape.to < 0) return legalMoves(position);
  const moves = movesTo(position, shape.to, shape.kinds);
  if (!isCastlingSquare || position.castling === 0) return moves;
  // The king's goal names castling, and so does the rook's square behind it ("e1h1").
  for (const move of legalMoves(position)) {
    if (move.castle === null) continue;
    const rook = move.castle === 'short' ? move.to + 1 : move.to - 2;
    if (shape.to === move.to || (shape.to === rook && shape.fromFiles === 16)) moves.push(move);
  }
  return moves;
}

function fits(position: Position, shape: Shape, move: Move): boolean {
  if ((shape.kinds & KIND_BIT[move.kind]) === 0) return false;
  if (((shape.fromFiles >> (move.from & 7)) & 1) === 0) return false;
  const isFlipped = shape.isRelative && position.turn === 'b';
  const fromRank = isFlipped ? 7 - (move.from >> 3) : move.from >> 3;
  if (((shape.fromRanks >> fromRank) & 1) === 0) return false;
  if (move.castle === null || shape.to < 0) {
    if (((shape.toFiles >> (move.to & 7)) & 1) === 0) return false;
    const toRank = isFlipped ? 7 - (move.to >> 3) : move.to >> 3;
    if (((shape.toRanks >> toRank) & 1) === 0) return false;
  }
  if (move.promotion === null ? shape.promotion !== null : move.promotion !== (shape.promotion ?? 'q')) {
    return false;
  }
  if (shape.victims !== 0 && (move.captured === null || (shape.victims & KIND_BIT[move.captured]) === 0)) {
    return false;
  }
  if (shape.isPassant && shape.to < 0 && !move.isEnPassant) return false;
  return !(shape.isCapture && shape.to < 0 && move.captured === null);
}

function mismatch(shape: Shape, move: Move): number {
  if (shape.isCapture && move.captured === null) return 2;
  return move.castle === null ? 0 : 1;
}

/** A bare square is a pawn's step before it is a capture; "takes" takes the last man moved where it can. */
function narrowed(matches: Match[], shape: Shape, lastTo: Square): Match[] {
  if (matches.length === 0) return matches;
  if (shape.kinds === KIND_BIT.p && !shape.isCapture && shape.fromFiles === 255 && shape.victims === 0) {
    const steps = matches.filter(({ move }) => move.captured === null);
    if (steps.length > 0) return steps;
    return matches.map((match) => ({ ...match, cost: match.cost + 5, isGenerous: true }));
  }
  if (shape.isRecapture) {
    const back = matches.filter(({ move }) => move.to === lastTo);
    if (back.length > 0) return back;
  }
  return matches;
}
