// The board on which evidence is replayed: chess.js and nothing of ours (rule T1).

import { Chess } from 'chess.js';

/** A legal move: its UCI form, and what the other library needs to play it. */
interface ReplayMove {
  readonly uci: string;
  readonly raw: RawMove;
}

/** The part of the other library's own move that is used here; squares count 0 (a8) to 119 (h1). */
interface RawMove {
  readonly from: number;
  readonly to: number;
  readonly promotion?: string;
}

/** A board that plays forth and back. Each `play` counts one position. */
export interface ReplayBoard {
  legalMoves(): readonly ReplayMove[];
  play(move: ReplayMove): void;
  back(): void;
  isCheck(): boolean;
  /** True where too few men are left for any mate. */
  isInsufficient(): boolean;
  /** True where fifty moves of either side went by without a capture or a pawn's move; a mate on the board comes first. */
  isDrawnByClock(): boolean;
  /** First four FEN fields, en passant only if a capture there is legal; from a half-move clock of 80 on the clock too (rule V5). */
  key(): string;
  /** Why a move of the UCI form is not legal here. */
  whyNot(uci: string): MoveFault;
  positions(): number;
}

/** What is wrong with a move that is not legal. */
export type MoveFault = 'illegal-move' | 'wrong-side' | 'castling-through-check' | 'bad-en-passant';

const CLOCK_COUNTS_FROM = 80;

/**
 * The board for a FEN, or null where it cannot be played. The public `moves` of chess.js writes SAN and two
 * FENs for every move, at a hundred times the cost, so its own generator is called instead; the version is
 * pinned, and the tests of this room fail if these names go away.
 */
export function openReplayBoard(fen: string): ReplayBoard | null {
  const chess = load(fen);
  if (chess === null) return null;
  let positions = 0;
  return {
    legalMoves() {
      // biome-ignore lint/complexity/useLiteralKeys: the types allow a private name only in this form
      const moves: readonly RawMove[] = chess['_moves']({ legal: true });
      return moves.map((raw) => ({ uci: name(raw.from) + name(raw.to) + (raw.promotion ?? ''), raw }));
    },
    play(move) {
      positions += 1;
      // biome-ignore lint/complexity/useLiteralKeys: the types allow a private name only in this form
      chess['_makeMove'](move.raw);
    },
    back() {
      // biome-ignore lint/complexity/useLiteralKeys: the types allow a private name only in this form
      chess['_undoMove']();
    },
    isCheck: () => chess.isCheck(),
    isInsufficient: () => chess.isInsufficientMaterial(),
    isDrawnByClock: () => chess.isDrawByFiftyMoves(),
    key() {
      const fields = chess.fen().split(' ', 5);
      return fields.slice(0, Number(fields[4]) >= CLOCK_COUNTS_FROM ? 5 : 4).join(' ');
    },
    whyNot: (uci) => whyNot(chess, uci),
    positions: () => positions,
  };
}

function load(fen: string): Chess | null {
  const chess = new Chess();
  try {
    // It throws on a malformed FEN and offers no other way to ask.
    chess.load(fen);
  } catch {
    return null;
  }
  const [, , rights = '-'] = fen.split(/\s+/);
  const isAtHome = (square: 'e1' | 'h1' | 'a1' | 'e8' | 'h8' | 'a8', type: string): boolean => {
    const man = chess.get(square);
    return man !== undefined && man.type === type && man.color === (square.endsWith('1') ? 'w' : 'b');
  };
  if (/[KQ]/.test(rights) && !isAtHome('e1', 'k')) return null;
  if (/[kq]/.test(rights) && !isAtHome('e8', 'k')) return null;
  if (rights.includes('K') && !isAtHome('h1', 'r')) return null;
  if (rights.includes('Q') && !isAtHome('a1', 'r')) return null;
  if (rights.includes('k') && !isAtHome('h8', 'r')) return null;
  if (rights.includes('q') && !isAtHome('a8', 'r')) return null;
  const waiting = chess.turn() === 'w' ? 'b' : 'w';
  const [king] = chess.findPiece({ type: 'k', color: waiting });
  return king === undefined || chess.isAttacked(king, chess.turn()) ? null : chess;
}

function whyNot(chess: Chess, uci: string): MoveFault {
  if (!/^[a-h][1-8][a-h][1-8][qrbn]?$/.test(uci)) return 'illegal-move';
  const from = squareOf(uci.slice(0, 2));
  const to = squareOf(uci.slice(2, 4));
  const man = chess.get(from);
  if (man === undefined) return 'illegal-move';
  if (man.color !== chess.turn()) return 'wrong-side';
  const files = Math.abs(uci.charCodeAt(0) - uci.charCodeAt(2));
  if (man.type === 'k' && files === 2 && canCastleButForChecks(chess, uci)) return 'castling-through-check';
  if (man.type === 'p' && files === 1 && chess.get(to) === undefined) return 'bad-en-passant';
  return 'illegal-move';
}

/** True for a castling whose right is there and whose way is free: then only a check can forbid it. */
function canCastleButForChecks(chess: Chess, uci: string): boolean {
  const color = chess.turn();
  const rank = color === 'w' ? '1' : '8';
  if (uci !== `e${rank}g${rank}` && uci !== `e${rank}c${rank}`) return false;
  const isShort = uci.charAt(2) === 'g';
  const rights = chess.getCastlingRights(color);
  const files = isShort ? ['f', 'g'] : ['d', 'c', 'b'];
  return rights[isShort ? 'k' : 'q'] && files.every((file) => chess.get(squareOf(file + rank)) === undefined);
}

type SquareName = Parameters<Chess['get']>[0];

function squareOf(text: string): SquareName {
  // Every caller has matched the text against the form of a square.
  return text as SquareName;
}

function name(square: number): string {
  return String.fromCharCode(97 + (square & 15)) + String(8 - (square >> 4));
}
