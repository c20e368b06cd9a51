// Which reply refutes a first move? Rule V1: none where the move itself stalemates or draws.

import type { Uci } from '#lib/rules/move.ts';
import { positionEnd } from '#lib/rules/position-end.ts';
import { playUci } from '#lib/rules/uci.ts';
import { listLegal } from '../kernel-moves.ts';
import type { FirstMove, MateQuestion } from './mate-question.ts';

/**
 * The reply to name: the one the search found; where it looked at none because the move was the last
 * one allowed, the first legal reply; null after stalemate and where too few men are left to mate.
 */
export function namedRefutation(question: MateQuestion, first: FirstMove): Uci | null {
  const after = playUci(question.position, first.uci);
  if (after === null) throw new Error(`${first.uci} is not legal in ${question.fen}`);
  if (positionEnd(after) !== null) return null;
  if (first.by !== null) return first.by;
  const { calls } = question.engine;
  calls.make(first.move);
  const replies = listLegal(question.engine);
  calls.unmake(first.move);
  return replies[0]?.uci ?? null;
}
