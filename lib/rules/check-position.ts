// Can this position be played? (Not: can it arise in a game; problems need not.)

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { attackersOf, kingSquare } from './attacks.ts';
import { CASTLINGS, type Castling } from './castling.ts';
import { otherSide, type Position, type Side, type Square } from './position.ts';

/** Why a position cannot be played, with the squares or the count concerned. */
export type PositionReason =
  | { readonly code: 'kings'; readonly side: Side; readonly count: number }
  | { readonly code: 'too-many-men'; readonly side: Side; readonly count: number }
  | { readonly code: 'too-many-pawns'; readonly side: Side; readonly count: number }
  | { readonly code: 'pawn-on-last-rank'; readonly square: Square }
  /** The side that is not to move stands in check: its king could be taken. */
  | { readonly code: 'king-can-be-taken'; readonly side: Side; readonly checkers: readonly Square[] }
  /** A castling right whose king or rook is not at home. */
  | { readonly code: 'castling-right'; readonly letter: Castling['letter'] }
  /** An en passant square that no double step can just have passed. */
  | { readonly code: 'en-passant-square'; readonly square: Square };

/**
 * The position itself, or the first thing that makes it unplayable: one king a side, at most 16 men and
 * 8 pawns a side, no pawn on the last ranks, the side not to move not in check, rights and en passant
 * square in keeping with the men.
 */
export function checkPosition(position: Position): Result<Position, PositionReason> {
  const reason =
    countFault(position, 'w') ??
    countFault(position, 'b') ??
    pawnFault(position) ??
    checkFault(position) ??
    castlingFault(position) ??
    enPassantFault(position);
  return reason === null ? ok(position) : refuse(reason);
}

function countFault({ board }: Position, side: Side): PositionReason | null {
  const own = side === 'w' ? 0 : 8;
  let kings = 0;
  let pawns = 0;
  let men = 0;
  for (const man of board) {
    if (man === 0 || (man & 8) !== own) continue;
    men += 1;
    if (man === own + 6) kings += 1;
    if (man === own + 1) pawns += 1;
  }
  if (kings !== 1) return { code: 'kings', side, count: kings };
  if (men > 16) return { code: 'too-many-men', side, count: men };
  return pawns > 8 ? { code: 'too-many-pawns', side, count: pawns } : null;
}

function pawnFault({ board }: Position): PositionReason | null {
  for (let square = 0; square < 64; square += 1) {
    const rank = square >> 3;
    if ((rank === 0 || rank === 7) && ((board[square] ?? 0) & 7) === 1) {
      return { code: 'pawn-on-last-rank', square };
    }
  }
  return null;
}

function checkFault({ board, turn }: Position): PositionReason | null {
  const side = otherSide(turn);
  const checkers = attackersOf(board, kingSquare(board, side), turn === 'w' ? 0 : 8);
  return checkers.length > 0 ? { code: 'king-can-be-taken', side, checkers } : null;
}

function castlingFault({ board, castling }: Position): PositionReason | null {
  for (const { right, letter, kingFrom, rookFrom } of CASTLINGS) {
    const own = right < 4 ? 0 : 8;
    const isAtHome = board[kingFrom] === own + 6 && board[rookFrom] === own + 4;
    if ((castling & right) !== 0 && !isAtHome) return { code: 'castling-right', letter };
  }
  return null;
}

function enPassantFault({ board, turn, enPassant }: Position): PositionReason | null {
  if (enPassant < 0) return null;
  const back = turn === 'w' ? 8 : -8;
  const isPossible =
    enPassant >> 3 === (turn === 'w' ? 5 : 2) &&
    board[enPassant] === 0 &&
    board[enPassant + back] === 0 &&
    board[enPassant - back] === (turn === 'w' ? 9 : 1);
  return isPossible ? null : { code: 'en-passant-square', square: enPassant };
}
