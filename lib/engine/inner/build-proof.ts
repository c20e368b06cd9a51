// Which graph proves a mate? Positions are shared: each is solved once, by its shortest mate, and has
// one node. So lengths fall along every line, and no line can go round.

import type { Proof, ProofNode } from '#lib/checker/proof.ts';
import { listLegal, uciOf } from '../kernel-moves.ts';
import { type FirstMove, type MateQuestion, runWithin } from './mate-question.ts';

/** Larger graphs are not written down: nobody could check them within the checker's bound (rule T1). */
const MOST_NODES = 200_000;

interface Draft {
  readonly question: MateQuestion;
  readonly nodes: ProofNode[];
  readonly places: Map<bigint, number>;
  budget: number;
}

/**
 * The proof that a first move of known length mates, or null where it would have more than 200,000
 * nodes or more search than the budget of a first move. Costs a few microseconds a position.
 */
export function buildProof(question: MateQuestion, first: FirstMove): Proof | null {
  const { mateIn, move, uci } = first;
  if (mateIn === null) return null;
  const draft: Draft = { question, nodes: [], places: new Map(), budget: question.proofNodes };
  const isWhole = addNode(draft, { move, uci, length: mateIn }) !== null;
  return isWhole ? { v: 1, fen: question.fen, n: mateIn, nodes: draft.nodes } : null;
}

// The index of a new node for the position on the board, or null where a bound is met.
function addNode(
  draft: Draft,
  { move, uci, length }: { readonly move: number; readonly uci: string; readonly length: number },
): number | null {
  const { calls } = draft.question.engine;
  if (draft.nodes.length >= MOST_NODES) return null;
  const index = draft.nodes.length;
  const replies: Record<string, number> = {};
  draft.nodes.push({ move: uci, replies });
  calls.make(move);
  let isWhole = true;
  for (const reply of length === 1 ? [] : listLegal(draft.question.engine)) {
    calls.make(reply.move);
    const child = findNode(draft, length - 1);
    calls.unmake(reply.move);
    if (child === null) {
      isWhole = false;
      break;
    }
    replies[reply.uci] = child;
  }
  calls.unmake(move);
  return isWhole ? index : null;
}

// The node of the solver's position on the board, found or new.
function findNode(draft: Draft, bound: number): number | null {
  const { question, places } = draft;
  const { calls } = question.engine;
  const key = calls.questionKey();
  const known = places.get(key);
  if (known !== undefined) return known;
  const { value: length, nodes } = runWithin(question, draft.budget, () => calls.shortestMate(bound));
  draft.budget -= nodes;
  if (length === 0) throw new Error(`No mate in ${bound} where one was proved: ${question.fen}`);
  const move = calls.mateMove();
  const uci = uciOf(move);
  if (length === 255 || uci === null) return null;
  const index = addNode(draft, { move, uci, length });
  if (index !== null) places.set(key, index);
  return index;
}
