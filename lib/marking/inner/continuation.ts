// How would it have gone on? The moves from the end of a walk that the book's evidence gives, for explanations.

import type { BookRow } from '#lib/book/book-row.ts';
import type { Proof } from '#lib/checker/proof.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { Walk } from './walk.ts';

/** Most moves of a continuation. */
const MOST_MOVES = 12;

/** Moves after the last solver move of a walk: the longest defence and how it is met; empty where unknown. */
export function continuationOf(walk: Walk): Uci[] {
  const { row, node } = walk;
  if (row === null) return [];
  // After the solver's move, or after one reply to it that the text gave.
  const written = node.ply % 2 === 0 ? node.move : null;
  const line = lineOf(row, written);
  return (written === null ? line : line.slice(1)).slice(0, MOST_MOVES);
}

function lineOf(row: BookRow, reply: Uci | null): readonly Uci[] {
  switch (row.evidence.kind) {
    case 'proof':
      return proofLine(row.evidence.proof, row, reply);
    case 'large-proof':
      return agrees(row.evidence.line.slice(1), reply);
    case 'search':
    case 'table':
      return agrees(row.evidence.line, reply);
    default:
      return [];
  }
}

function agrees(line: readonly Uci[], reply: Uci | null): readonly Uci[] {
  return reply === null || line[0] === reply ? line : [];
}

// Down the proof along a longest defence; the nodes of a proof do not say how long they last, the row does so for
// the first reply only.
function proofLine(proof: Proof, row: BookRow, reply: Uci | null): Uci[] {
  const moves: Uci[] = [];
  let replies = proof.nodes[0]?.replies ?? {};
  for (let at = reply ?? row.adequate[0] ?? null; at !== null && moves.length < MOST_MOVES; ) {
    const node = proof.nodes[replies[at] ?? -1];
    if (node === undefined) break;
    moves.push(at, node.move);
    replies = node.replies;
    at = longestReply(proof, replies);
  }
  return moves;
}

function longestReply(proof: Proof, replies: Readonly<Record<Uci, number>>): Uci | null {
  let best: Uci | null = null;
  let most = -1;
  for (const [reply, index] of Object.entries(replies)) {
    const depth = depthBelow(proof, index, 3);
    if (depth <= most) continue;
    most = depth;
    best = reply;
  }
  return best;
}

function depthBelow(proof: Proof, index: number, patience: number): number {
  const node = proof.nodes[index];
  if (node === undefined || patience === 0) return 0;
  const below = Object.values(node.replies);
  return below.length === 0
    ? 0
    : 1 + Math.max(...below.slice(0, 8).map((next) => depthBelow(proof, next, patience - 1)));
}
