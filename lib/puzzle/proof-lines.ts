// How is a proof printed? As a column does: every reply to the key, those with the same continuation
// together, the longest first, each continuation against the longest defence.

import type { Proof } from '#lib/checker/proof.ts';
import type { Uci } from '#lib/rules/move.ts';

/** Replies that meet the same next move, and how it goes on against the first of them. */
export interface Variation {
  readonly replies: readonly Uci[];
  /** Solver's move, reply, solver's move, ... up to the mate. */
  readonly line: readonly Uci[];
}

/**
 * The variations after the first move of a proof, the longest first. Cost: one visit of every node of the
 * graph; a proof whose root is mate has none.
 */
export function proofVariations(proof: Proof): Variation[] {
  const lengths = mateLengths(proof);
  const root = proof.nodes[0];
  if (root === undefined) return [];
  const groups = new Map<Uci, { replies: Uci[]; node: number }>();
  for (const [reply, node] of byLength(Object.entries(root.replies), lengths)) {
    const next = proof.nodes[node]?.move;
    if (next === undefined) continue;
    const group = groups.get(next);
    if (group === undefined) groups.set(next, { replies: [reply], node });
    else group.replies.push(reply);
  }
  return [...groups.values()].map(({ replies, node }) => ({
    replies,
    line: longestLine(proof, node, lengths),
  }));
}

/** Solver moves to mate from each node, against the longest defence. The graph has no circles: each step leaves fewer moves. */
function mateLengths(proof: Proof): number[] {
  const lengths: number[] = [];
  const pending = [0];
  while (pending.length > 0) {
    const index = pending[pending.length - 1] ?? 0;
    const children = Object.values(proof.nodes[index]?.replies ?? {});
    const open = children.filter((child) => lengths[child] === undefined);
    if (lengths[index] === undefined && open.length > 0) {
      if (pending.length > proof.nodes.length) throw new Error('a proof runs in a circle');
      pending.push(...open.slice(0, 1));
      continue;
    }
    lengths[index] = 1 + Math.max(0, ...children.map((child) => lengths[child] ?? 0));
    pending.pop();
  }
  return lengths;
}

function byLength(replies: [Uci, number][], lengths: readonly number[]): [Uci, number][] {
  return replies.sort(([a, x], [b, y]) => (lengths[y] ?? 0) - (lengths[x] ?? 0) || (a < b ? -1 : 1));
}

function longestLine(proof: Proof, from: number, lengths: readonly number[]): Uci[] {
  const line: Uci[] = [];
  for (let index: number | undefined = from; index !== undefined; ) {
    const node: Proof['nodes'][number] | undefined = proof.nodes[index];
    if (node === undefined) break;
    line.push(node.move);
    const [longest] = byLength(Object.entries(node.replies), lengths);
    if (longest !== undefined) line.push(longest[0]);
    index = longest?.[1];
  }
  return line;
}
