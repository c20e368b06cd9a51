// How long is the shortest forced mate of a position? For mates that the evaluator meets on its way:
// they are proved before they are called mates.

import type { Uci } from '#lib/rules/move.ts';
import type { Engine } from './create-engine.ts';
import { askMate, type Patience, runWithin } from './inner/mate-question.ts';
import { uciOf } from './kernel-moves.ts';

/** `mateIn` and `move` are null where no mate in at most the bound is forced, or (`isComplete` false) none was found in the budget. */
export interface FoundMate {
  readonly mateIn: number | null;
  readonly move: Uci | null;
  readonly nodes: number;
  readonly isComplete: boolean;
}

/** The shortest mate of the side to move in at most `bound` moves, exact; `proofNodes` is the budget of the whole question. */
export function findMate(
  engine: Engine,
  {
    fen,
    bound,
    proofNodes,
    ...patience
  }: { readonly fen: string; readonly bound: number; readonly proofNodes: number } & Patience,
): FoundMate {
  const question = askMate(engine, fen, { proofNodes, ...patience });
  const { value, nodes } = runWithin(question, proofNodes, () => engine.calls.shortestMate(bound));
  if (value === 255) return { mateIn: null, move: null, nodes, isComplete: false };
  if (value === 0) return { mateIn: null, move: null, nodes, isComplete: true };
  return { mateIn: value, move: uciOf(engine.calls.mateMove()), nodes, isComplete: true };
}
