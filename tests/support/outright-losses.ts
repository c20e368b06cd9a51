import { isCheck } from '#lib/rules/attacks.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Uci } from '#lib/rules/move.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Kind, Position } from '#lib/rules/position.ts';
import { findUci } from '#lib/rules/uci.ts';

// Values of the men as the trade counts them (common practice, no source).
const WORTH: Record<Kind, number> = { p: 1, n: 3, b: 3, r: 5, q: 9, k: 100 };
const PIECE = 3;
const MOST_PLIES = 8;

/**
 * Does a quiet move lose a piece outright: it takes nothing and gives no check, and when both sides have taken
 * what they care to take, its side is poorer by a piece or more than before? Offers that mate or win by other
 * means than captures are counted, too: what a bench counts is looked at.
 */
export function losesPieceOutright(fen: string, uci: Uci): boolean {
  const parsed = parseFen(fen);
  if (!parsed.ok) throw new Error(fen);
  const move = findUci(parsed.value, uci);
  if (move === null || move.captured !== null || move.promotion !== null) return false;
  if (move.kind === 'p' || move.kind === 'k') return false;
  const after = playMove(parsed.value, move);
  if (isCheck(after)) return false;
  return bestByTaking(after, { alpha: -Infinity, beta: Infinity, plies: MOST_PLIES }) >= PIECE;
}

/** What the side to move gains at best by captures, either side being free to stop; in pawns. */
function bestByTaking(
  position: Position,
  { alpha, beta, plies }: { readonly alpha: number; readonly beta: number; readonly plies: number },
): number {
  let best = 0;
  if (plies === 0) return best;
  const captures = legalMoves(position)
    .filter((move) => move.captured !== null)
    .sort((a, b) => WORTH[b.captured ?? 'p'] - WORTH[a.captured ?? 'p'] || WORTH[a.kind] - WORTH[b.kind]);
  for (const move of captures) {
    if (best >= beta) break;
    const gain = WORTH[move.captured ?? 'p'];
    const low = Math.max(alpha, best);
    const reply = bestByTaking(playMove(position, move), {
      alpha: gain - beta,
      beta: gain - low,
      plies: plies - 1,
    });
    best = Math.max(best, gain - reply);
  }
  return best;
}
