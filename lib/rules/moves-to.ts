// Which legal moves reach one square. Faster than listing all moves where the goal is known, as when a
// written move is looked up.

import { isAttackedOn, kingSquare } from './attacks.ts';
import { enPassantCapturers } from './en-passant.ts';
import { KING_STEPS, KNIGHT_STEPS, RAYS, squaresAt } from './inner/geometry.ts';
import type { Move } from './move.ts';
import { type Kind, kindOf, type Position, type Square } from './position.ts';

/** How each kind stands in a set of kinds: bit 1 pawn, 2 knight, ... 6 king, as in a man's byte. */
export const KIND_BIT: Readonly<Record<Kind, number>> = { p: 2, n: 4, b: 8, r: 16, q: 32, k: 64 };

/** All kinds. */
export const ANY_KIND = 126;

const PROMOTIONS: readonly Kind[] = ['q', 'r', 'b', 'n'];

/**
 * The legal moves of men of the given kinds (bits of KIND_BIT) to one square, castling left out (ask
 * `legalMoves`). The same moves as a filter over `legalMoves`, in an order of their own; about a
 * microsecond.
 */
export function movesTo(position: Position, to: Square, kinds: number): Move[] {
  const { board, turn } = position;
  const own = turn === 'w' ? 0 : 8;
  const target = board[to] ?? 0;
  const moves: Move[] = [];
  if (target !== 0 && (target & 8) === own) return moves;
  const king = kingSquare(board, turn);
  if ((kinds & KIND_BIT.p) !== 0) addPawns(position, to, king, moves);
  if ((kinds & KIND_BIT.n) !== 0) {
    for (const from of squaresAt(KNIGHT_STEPS, to)) {
      if (board[from] === own + 2) addIfLegal(position, { from, to, king }, moves);
    }
  }
  if ((kinds & (KIND_BIT.b | KIND_BIT.r | KIND_BIT.q)) !== 0) addSliders(position, to, kinds, moves);
  if ((kinds & KIND_BIT.k) !== 0) {
    for (const from of squaresAt(KING_STEPS, to)) {
      if (from === king && !isAttackedOn(board, to, 8 - own, king)) addMove(position, from, to, moves);
    }
  }
  return moves;
}

function addSliders(position: Position, to: Square, kinds: number, moves: Move[]): void {
  const { board, turn } = position;
  const own = turn === 'w' ? 0 : 8;
  const king = kingSquare(board, turn);
  for (let direction = 0; direction < 8; direction += 1) {
    const straight = direction < 4 ? 4 : 3;
    for (const from of squaresAt(RAYS, to * 8 + direction)) {
      const man = board[from] ?? 0;
      if (man === 0) continue;
      if ((man & 8) === own && ((man & 7) === straight || (man & 7) === 5) && (kinds >> (man & 7)) & 1) {
        addIfLegal(position, { from, to, king }, moves);
      }
      break;
    }
  }
}

function addPawns(position: Position, to: Square, king: Square, moves: Move[]): void {
  const { board, turn } = position;
  const isWhite = turn === 'w';
  const pawn = isWhite ? 1 : 9;
  const back = isWhite ? -8 : 8;
  const file = to & 7;
  if (board[to] === 0) {
    const one = to + back;
    const two = one + back;
    if (board[one] === pawn) addIfLegal(position, { from: one, to, king }, moves);
    else if (to >> 3 === (isWhite ? 3 : 4) && board[one] === 0 && board[two] === pawn) {
      addIfLegal(position, { from: two, to, king }, moves);
    }
    if (to !== position.enPassant) return;
    for (const from of enPassantCapturers(position)) {
      moves.push({ from, to, kind: 'p', captured: 'p', promotion: null, castle: null, isEnPassant: true });
    }
    return;
  }
  if (file > 0 && board[to + back - 1] === pawn)
    addIfLegal(position, { from: to + back - 1, to, king }, moves);
  if (file < 7 && board[to + back + 1] === pawn)
    addIfLegal(position, { from: to + back + 1, to, king }, moves);
}

/** Plays the move on a copy and looks whether the own king stands attacked. */
function addIfLegal(
  position: Position,
  { from, to, king }: { readonly from: Square; readonly to: Square; readonly king: Square },
  moves: Move[],
): void {
  const board = position.board.slice();
  board[to] = board[from] ?? 0;
  board[from] = 0;
  if (!isAttackedOn(board, king, position.turn === 'w' ? 8 : 0, -1)) addMove(position, from, to, moves);
}

function addMove(position: Position, from: Square, to: Square, moves: Move[]): void {
  const kind = kindOf(position.board[from] ?? 0);
  if (kind === null) throw new Error(`No man on square ${from}`);
  const captured = kindOf(position.board[to] ?? 0);
  const plain: Move = { from, to, kind, captured, promotion: null, castle: null, isEnPassant: false };
  if (kind !== 'p' || (to >= 8 && to < 56)) moves.push(plain);
  else for (const promotion of PROMOTIONS) moves.push({ ...plain, promotion });
}
