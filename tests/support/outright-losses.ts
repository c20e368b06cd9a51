import { isAttacked, isCheck } from '#lib/rules/attacks.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Uci } from '#lib/rules/move.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Kind } from '#lib/rules/position.ts';
import { findUci } from '#lib/rules/uci.ts';

const WORTH: Record<Kind, number> = { p: 1, n: 3, b: 3, r: 5, q: 9, k: 100 };

/**
 * Does a quiet move, which gives no check and threatens nothing by taking, put its piece where it can be
 * taken for nothing: attacked by the defender and guarded by nobody? Blunt on purpose: such a move may
 * still be a deep offer, and a position may be won in spite of it; what a bench counts is looked at.
 */
export function losesPieceOutright(fen: string, uci: Uci): boolean {
  const parsed = parseFen(fen);
  if (!parsed.ok) throw new Error(fen);
  const position = parsed.value;
  const move = findUci(position, uci);
  if (move === null || move.captured !== null || move.promotion !== null) return false;
  if (move.kind === 'p' || move.kind === 'k') return false;
  const after = playMove(position, move);
  if (isCheck(after)) return false;
  const takers = legalMoves(after).filter((reply) => reply.to === move.to);
  if (takers.length === 0) return false;
  const isGuarded = isAttacked(after, move.to, position.turn);
  const cheapest = Math.min(...takers.map(({ kind }) => WORTH[kind]));
  return !isGuarded || WORTH[move.kind] - cheapest >= 2;
}
