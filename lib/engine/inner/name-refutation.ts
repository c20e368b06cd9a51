// Which reply refutes a first move? Rule V1: none where the move itself stalemates or draws.

import type { Uci } from '#lib/rules/move.ts';
import { positionEnd } from '#lib/rules/position-end.ts';
import { playUci } from '#lib/rules/uci.ts';
import { listLegal } from '../kernel-moves.ts';
import type { FirstMove, MateQuestion } from './mate-question.ts';

/** A pawn, rook or queen: with one of them on the board mate stays possible. */
const isStrong = (man: number): boolean => man !== 0 && [1, 4, 5].includes(man & 7);

// Only where at most one strong man stands can a move leave too few: asked seldom, for it costs much
// more than the rest of a short question.
function drawsByMaterial({ position, fen }: MateQuestion, uci: Uci): boolean {
  if (position.board.filter(isStrong).length > 1) return false;
  const after = playUci(position, uci);
  if (after === null) throw new Error(`${uci} is not legal in ${fen}`);
  return positionEnd(after) === 'insufficient';
}

// Near the fifty-move rule the move itself can bring the draw (rule V5).
function drawsByClock({ position, fen }: MateQuestion, uci: Uci): boolean {
  if (position.halfmoveClock < 99) return false;
  const after = playUci(position, uci);
  if (after === null) throw new Error(`${uci} is not legal in ${fen}`);
  return after.halfmoveClock >= 100;
}

/**
 * The reply to name: the one the search found; where it looked at none because the move was the last
 * one allowed, the first legal reply; null after stalemate, where too few men are left to mate, and after fifty
 * moves.
 */
export function namedRefutation(question: MateQuestion, first: FirstMove): Uci | null {
  if (drawsByMaterial(question, first.uci) || drawsByClock(question, first.uci)) return null;
  if (first.by !== null) return first.by;
  const { calls } = question.engine;
  calls.make(first.move);
  const replies = listLegal(question.engine);
  calls.unmake(first.move);
  return replies[0]?.uci ?? null;
}
