// Which moves are legal here.

import { attackersOf, isAttackedOn, kingSquare } from './attacks.ts';
import { addCastlings } from './castling.ts';
import { enPassantCapturers } from './en-passant.ts';
import {
  DIRECTION,
  DISTANCE,
  KING_STEPS,
  KNIGHT_STEPS,
  PAWN_TARGETS,
  RAYS,
  squaresAt,
} from './inner/geometry.ts';
import type { Move } from './move.ts';
import { pinsOf } from './pins.ts';
import { type Kind, kindOf, type Position, type Square } from './position.ts';

/** What restricts the men other than the king: one line if pinned, one line or man if in check. */
interface Bounds {
  readonly king: Square;
  /** The man that gives check, or -1. */
  readonly checker: Square;
  /** The direction from the king in which this man is pinned, or -1. */
  readonly pin: number;
}

const PROMOTIONS: readonly Kind[] = ['q', 'r', 'b', 'n'];

/**
 * All legal moves, each once, in a fixed order (by square from a1, then by kind of move). Castling is
 * the king's move of two squares. Empty for checkmate and stalemate. The position must have passed
 * `checkPosition`. Costs a few microseconds.
 */
export function legalMoves(position: Position): Move[] {
  return collectMoves(position, false);
}

/** Is there any legal move? Stops at the first man that has one, so that most positions cost a tenth of the list. */
export function hasLegalMove(position: Position): boolean {
  return collectMoves(position, true).length > 0;
}

function collectMoves(position: Position, isOneEnough: boolean): Move[] {
  const { board, turn } = position;
  const own = turn === 'w' ? 0 : 8;
  const king = kingSquare(board, turn);
  const checkers = attackersOf(board, king, 8 - own);
  const moves: Move[] = [];
  if (checkers.length < 2) {
    const pins = pinsOf(board, king, turn);
    const checker = checkers[0] ?? -1;
    for (let from = 0; from < 64; from += 1) {
      const man = board[from] ?? 0;
      if (man === 0 || (man & 8) !== own || from === king) continue;
      let pin = -1;
      for (const pinned of pins) if (pinned.square === from) pin = pinned.direction;
      addMovesFrom(position, from, { king, checker, pin }, moves);
      if (isOneEnough && moves.length > 0) return moves;
    }
    if (position.enPassant >= 0) addEnPassant(position, moves);
  }
  addKingMoves(position, king, moves);
  if (checkers.length === 0 && position.castling !== 0) addCastlings(position, moves);
  return moves;
}

function addMovesFrom(position: Position, from: Square, bounds: Bounds, moves: Move[]): void {
  const { board, turn } = position;
  const own = turn === 'w' ? 0 : 8;
  const man = (board[from] ?? 0) & 7;
  if (man === 1) {
    addPawnMoves(position, from, bounds, moves);
    return;
  }
  if (man === 2) {
    if (bounds.pin >= 0) return;
    for (const to of squaresAt(KNIGHT_STEPS, from)) {
      const target = board[to] ?? 0;
      if (target !== 0 && (target & 8) === own) continue;
      if (isWithin(bounds, to)) moves.push(plainMove(board, from, to));
    }
    return;
  }
  const first = man === 3 ? 4 : 0;
  const last = man === 4 ? 4 : 8;
  for (let direction = first; direction < last; direction += 1) {
    for (const to of squaresAt(RAYS, from * 8 + direction)) {
      const target = board[to] ?? 0;
      if (target !== 0 && (target & 8) === own) break;
      if (isWithin(bounds, to)) moves.push(plainMove(board, from, to));
      if (target !== 0) break;
    }
  }
}

function addPawnMoves(position: Position, from: Square, bounds: Bounds, moves: Move[]): void {
  const { board, turn } = position;
  const isWhite = turn === 'w';
  const forward = isWhite ? 8 : -8;
  const one = from + forward;
  if (board[one] === 0) {
    addPawnMove(board, from, one, bounds, moves);
    const two = one + forward;
    if (from >> 3 === (isWhite ? 1 : 6) && board[two] === 0) addPawnMove(board, from, two, bounds, moves);
  }
  for (const to of squaresAt(PAWN_TARGETS, isWhite ? from : 64 + from)) {
    const target = board[to] ?? 0;
    if (target !== 0 && (target & 8) !== (isWhite ? 0 : 8)) addPawnMove(board, from, to, bounds, moves);
  }
}

function addPawnMove(board: Uint8Array, from: Square, to: Square, bounds: Bounds, moves: Move[]): void {
  if (!isWithin(bounds, to)) return;
  const rank = to >> 3;
  if (rank !== 0 && rank !== 7) {
    moves.push(plainMove(board, from, to));
    return;
  }
  for (const promotion of PROMOTIONS) moves.push({ ...plainMove(board, from, to), promotion });
}

function addEnPassant(position: Position, moves: Move[]): void {
  for (const from of enPassantCapturers(position)) {
    moves.push({
      from,
      to: position.enPassant,
      kind: 'p',
      captured: 'p',
      promotion: null,
      castle: null,
      isEnPassant: true,
    });
  }
}

function addKingMoves(position: Position, king: Square, moves: Move[]): void {
  const { board, turn } = position;
  const own = turn === 'w' ? 0 : 8;
  for (const to of squaresAt(KING_STEPS, king)) {
    const target = board[to] ?? 0;
    if (target !== 0 && (target & 8) === own) continue;
    // The king is seen through: on a rank with a rook it may not step straight back.
    if (!isAttackedOn(board, to, 8 - own, king)) moves.push(plainMove(board, king, to));
  }
}

/** True if the arrival square keeps the pin's line and answers the check. */
function isWithin({ king, checker, pin }: Bounds, to: Square): boolean {
  const line = DIRECTION[king * 64 + to];
  if (pin >= 0 && line !== pin) return false;
  if (checker < 0 || to === checker) return true;
  const checkLine = DIRECTION[king * 64 + checker] ?? -1;
  if (checkLine < 0 || line !== checkLine) return false;
  return (DISTANCE[king * 64 + to] ?? 0) < (DISTANCE[king * 64 + checker] ?? 0);
}

function plainMove(board: Uint8Array, from: Square, to: Square): Move {
  const kind = kindOf(board[from] ?? 0);
  if (kind === null) throw new Error(`No man on square ${from}`);
  return {
    from,
    to,
    kind,
    captured: kindOf(board[to] ?? 0),
    promotion: null,
    castle: null,
    isEnPassant: false,
  };
}
