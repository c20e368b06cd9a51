// Does a reply refute a try? Rule T1: replayed with another rules library; where at most two moves are left
// after the reply, every way to mate is tried.

import { MOST_POSITIONS } from './check-proof.ts';
import { type MoveFault, openReplayBoard, type ReplayBoard } from './inner/replay-board.ts';
import type { CheckStatus } from './proof.ts';

/** A solver move that is said to fail, and why. */
export interface Refutation {
  readonly fen: string;
  readonly move: string;
  /** The refuting reply; null where the move itself stalemates or draws. */
  readonly reply: string | null;
  /** Solver moves left after the reply. */
  readonly movesLeft: number;
}

/** What is wrong with a refutation. */
export type RefutationFault =
  | { readonly code: 'bad-position' }
  /** The move or the reply cannot be played. */
  | { readonly code: MoveFault; readonly move: string }
  /** No reply is given, and the game goes on. */
  | { readonly code: 'no-draw' }
  /** The move is checkmate. */
  | { readonly code: 'is-mate' }
  /** Mate follows all the same, and this move begins it. */
  | { readonly code: 'mate-follows'; readonly move: string };

/** How a refutation stands. */
export interface RefutationCheck {
  readonly status: CheckStatus;
  readonly reason: RefutationFault | null;
  readonly positions: number;
  /** False where more than two moves are left: then only the moves were replayed. */
  readonly isExhaustive: boolean;
}

/** Up to so many moves left, every way to mate is tried. */
const EXHAUSTIVE_UP_TO = 2;

/**
 * `passed` and exhaustive means: after the reply no mate can be forced in the moves left; the half-move clock of
 * the FEN counts (rule V5). `passed` and not exhaustive: the moves are legal. Within `maxPositions` (200,000), else `too-large`.
 */
export function checkRefutation(
  refutation: Refutation,
  options: { readonly maxPositions?: number } = {},
): RefutationCheck {
  const { fen, move, reply, movesLeft } = refutation;
  const board = openReplayBoard(fen);
  if (board === null) return failed({ code: 'bad-position' }, 0);
  for (const uci of reply === null ? [move] : [move, reply]) {
    const found = board.legalMoves().find((legal) => legal.uci === uci);
    if (found === undefined) return failed({ code: board.whyNot(uci), move: uci }, board.positions());
    board.play(found);
    if (uci === move && isMate(board)) return failed({ code: 'is-mate' }, board.positions());
  }
  if (reply === null) {
    const isDraw = board.legalMoves().length === 0 || board.isInsufficient() || board.isDrawnByClock();
    if (!isDraw) return failed({ code: 'no-draw' }, board.positions());
    return { status: 'passed', reason: null, positions: board.positions(), isExhaustive: true };
  }
  if (movesLeft > EXHAUSTIVE_UP_TO) {
    return { status: 'passed', reason: null, positions: board.positions(), isExhaustive: false };
  }
  const mate = findMate(board, movesLeft, options.maxPositions ?? MOST_POSITIONS);
  if (mate === 'too-large') {
    return { status: 'too-large', reason: null, positions: board.positions(), isExhaustive: false };
  }
  if (mate !== null) return failed({ code: 'mate-follows', move: mate }, board.positions());
  return { status: 'passed', reason: null, positions: board.positions(), isExhaustive: true };
}

/** A move that mates in at most `moves`, null where there is none, or `too-large`. */
function findMate(board: ReplayBoard, moves: number, maxPositions: number): string | null {
  if (moves <= 0 || board.isDrawnByClock()) return null;
  for (const move of board.legalMoves()) {
    if (board.positions() >= maxPositions) return 'too-large';
    board.play(move);
    const outcome = isMate(board)
      ? 'mates'
      : moves === 1
        ? 'fails'
        : mateAgainstAll(board, moves - 1, maxPositions);
    board.back();
    if (outcome === 'mates') return move.uci;
    if (outcome === 'too-large') return outcome;
  }
  return null;
}

function mateAgainstAll(
  board: ReplayBoard,
  moves: number,
  maxPositions: number,
): 'mates' | 'fails' | 'too-large' {
  const replies = board.legalMoves();
  if (replies.length === 0 || board.isDrawnByClock()) return 'fails';
  for (const reply of replies) {
    if (board.positions() >= maxPositions) return 'too-large';
    board.play(reply);
    const mate = findMate(board, moves, maxPositions);
    board.back();
    if (mate === null) return 'fails';
    if (mate === 'too-large') return mate;
  }
  return 'mates';
}

function isMate(board: ReplayBoard): boolean {
  return board.isCheck() && board.legalMoves().length === 0;
}

function failed(reason: RefutationFault, positions: number): RefutationCheck {
  return { status: 'failed', reason, positions, isExhaustive: false };
}
