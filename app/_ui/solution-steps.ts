// A step of a line: the position after so many plies and the move that led there.

import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { findUci } from '#lib/rules/uci.ts';

/** A position on the way; `uci` is null at the start. */
export interface Step {
  readonly position: Position;
  readonly uci: string | null;
}

/** The step after so many plies of a line; what cannot be played, or lies beyond the end, is left out. */
export function stepAt(start: Position, moves: readonly string[], ply: number): Step {
  let step: Step = { position: start, uci: null };
  for (const uci of moves.slice(0, Math.max(0, ply))) {
    const move = findUci(step.position, uci);
    if (move === null) break;
    step = { position: playMove(step.position, move), uci };
  }
  return step;
}
