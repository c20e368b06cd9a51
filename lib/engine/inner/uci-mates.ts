// Which mates may a UCI search tell of? Those alone that the exhaustive prover confirms, within nodes that
// the `go` has left: what a search calls a mate is only a large value (rule V1: exact, or not said).

import type { Uci } from '#lib/rules/move.ts';
import type { Position } from '#lib/rules/position.ts';
import { playUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import type { Engine } from '../create-engine.ts';
import { findMate } from '../find-mate.ts';
import { askMate, deepenFirstMove } from './mate-question.ts';

/** A mate that a search believes in: in so many moves of the winner, negative where the side to move is mated. */
export interface MateClaim {
  readonly here: Position;
  readonly moves: number;
  /** The first move of the line. */
  readonly first: Uci;
  /** Where the side to move is mated: the first moves of which every one must lose. */
  readonly among: readonly Uci[];
}

/** What the prover has found out about the first moves of one position, to be asked again at the next depth. */
export interface MateKnowledge {
  /** `+e2e4`: moves to mate by it; `-e2e4`: moves of the opponent to mate after it. */
  readonly lengths: Map<string, number>;
  /** The same: so many moves are not enough. */
  readonly refuted: Map<string, number>;
}

/** What a confirmation may cost. */
export interface MatePatience {
  readonly nodes: number;
  readonly shouldStop: () => boolean;
}

/**
 * The exact length where the prover confirms the claim (negative as there), else null; and the nodes that it
 * took. Whatever was on the kernel's board is gone.
 */
export function confirmMate(
  engine: Engine,
  claim: MateClaim,
  { known, ...patience }: { readonly known: MateKnowledge } & MatePatience,
): { moves: number | null; nodes: number } {
  const { here, first } = claim;
  if (claim.moves > 0)
    return ask(engine, { here, uci: first, sign: '+', bound: claim.moves }, { known, ...patience });
  let nodes = 0;
  let longest = 0;
  // The line's own move is but the best of them: the others must lose as well.
  for (const uci of new Set([first, ...claim.among])) {
    const left = { ...patience, nodes: patience.nodes - nodes };
    const found = ask(engine, { here, uci, sign: '-', bound: -claim.moves }, { known, ...left });
    nodes += found.nodes;
    if (found.moves === null) return { moves: null, nodes };
    longest = Math.max(longest, found.moves);
  }
  return { moves: -longest, nodes };
}

/** Does this first move mate (`+`), or is it mated (`-`), in at most so many moves of the winner? */
interface MoveClaim {
  readonly here: Position;
  readonly uci: Uci;
  readonly sign: '+' | '-';
  readonly bound: number;
}

function ask(
  engine: Engine,
  claim: MoveClaim,
  { known, nodes, shouldStop }: { readonly known: MateKnowledge } & MatePatience,
): { moves: number | null; nodes: number } {
  const { uci, sign, bound } = claim;
  const length = known.lengths.get(sign + uci);
  if (length !== undefined) return { moves: length <= bound ? length : null, nodes: 0 };
  const isRefuted = (known.refuted.get(sign + uci) ?? 0) >= bound;
  if (isRefuted || nodes <= 0 || shouldStop()) return { moves: null, nodes: 0 };
  const found =
    sign === '+'
      ? mates(engine, claim, { nodes, shouldStop })
      : isMated(engine, claim, { nodes, shouldStop });
  if (found.moves !== null) known.lengths.set(sign + uci, found.moves);
  else if (found.isComplete) known.refuted.set(sign + uci, bound);
  return found;
}

interface Found {
  readonly moves: number | null;
  readonly nodes: number;
  readonly isComplete: boolean;
}

function mates(engine: Engine, { here, uci, bound }: MoveClaim, { nodes, shouldStop }: MatePatience): Found {
  const question = askMate(engine, writeFen(here), { proofNodes: nodes, shouldStop });
  const first = question.firstMoves.find((one) => one.uci === uci);
  if (first === undefined) throw new Error(`${uci} is not legal in ${writeFen(here)}`);
  const answer = deepenFirstMove(question, first, bound);
  return { moves: first.mateIn, nodes: question.nodes, isComplete: answer !== null };
}

function isMated(
  engine: Engine,
  { here, uci, bound }: MoveClaim,
  { nodes, shouldStop }: MatePatience,
): Found {
  const after = playUci(here, uci);
  if (after === null) throw new Error(`${uci} is not legal in ${writeFen(here)}`);
  const { mateIn, ...found } = findMate(engine, {
    fen: writeFen(after),
    bound,
    proofNodes: nodes,
    shouldStop,
  });
  return { moves: mateIn, nodes: found.nodes, isComplete: found.isComplete };
}
