// What touching a square means: choosing a man, moving it, or letting it go. Pure, so that tap, drag and key agree.

import type { Move } from '#lib/rules/move.ts';
import type { Square } from '#lib/rules/position.ts';

/** What follows from a touch. `move` has several candidates where a pawn promotes. */
export type Touch =
  | { readonly kind: 'choose'; readonly from: Square; readonly targets: readonly Square[] }
  | { readonly kind: 'move'; readonly candidates: readonly [Move, ...Move[]] }
  | { readonly kind: 'let-go' }
  | { readonly kind: 'nothing' };

/** Judges a touch against the legal moves of the position and the man chosen before, if any. */
export function touchSquare(legal: readonly Move[], chosen: Square | null, square: Square): Touch {
  if (chosen !== null) {
    if (square === chosen) return { kind: 'let-go' };
    const [first, ...others] = legal.filter((move) => move.from === chosen && move.to === square);
    if (first !== undefined) return { kind: 'move', candidates: [first, ...others] };
  }
  const targets = reachable(legal, square);
  if (targets.length > 0) return { kind: 'choose', from: square, targets };
  return chosen === null ? { kind: 'nothing' } : { kind: 'let-go' };
}

/** The squares that the man on a square can reach, each once. */
export function reachable(legal: readonly Move[], from: Square): readonly Square[] {
  return [...new Set(legal.filter((move) => move.from === from).map((move) => move.to))];
}
