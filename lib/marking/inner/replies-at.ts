// Which replies are worth answering? Rule O2, and the order in which rule O3 tries them.

import type { BookRow } from '#lib/book/book-row.ts';
import type { TreeNode } from '#lib/book/position-tree.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { KnownReplies, PuzzleFacts } from './walk-context.ts';

/** The replies at a position after a solver move that holds or is slower. */
export interface Replies {
  isAdequate(reply: Uci): boolean;
  /** Longest-lasting first, then in UCI order. */
  compare(a: Uci, b: Uci): number;
}

/** A reply at most so much worse for the defender than the best is adequate in win and draw tasks (rule O2). */
const ADEQUATE_WITHIN = 100;

/** `row` is the verdict on the move that led here; null where rules or a ruling settled it: then any reply will do. */
export function repliesAt(facts: PuzzleFacts, node: TreeNode, row: BookRow | null): Replies {
  const { terms, published } = facts;
  const isKnown = row !== null && row.replies.length > 0;
  const { values, best } = isKnown ? valuesOf(facts, row) : NOTHING_KNOWN;
  return {
    isAdequate: (reply) => {
      if (terms.anyDefence || !isKnown || row.adequate.includes(reply)) return true;
      if (published.isReply(node.key, reply)) return true;
      const value = values.get(reply)?.value ?? null;
      return terms.task.kind !== 'mate' && value !== null && value <= best + ADEQUATE_WITHIN;
    },
    compare: (a, b) => lastingOf(values.get(b)) - lastingOf(values.get(a)) || (a < b ? -1 : a > b ? 1 : 0),
  };
}

const NOTHING_KNOWN: KnownReplies = { values: new Map(), best: Number.POSITIVE_INFINITY };

function valuesOf({ knownReplies }: PuzzleFacts, row: BookRow): KnownReplies {
  const known = knownReplies.get(row);
  if (known !== undefined) return known;
  const values = new Map(row.replies.map((reply) => [reply.uci, reply]));
  const best = Math.min(...row.replies.map(({ value }) => value ?? Number.POSITIVE_INFINITY));
  const fresh = { values, best };
  knownReplies.set(row, fresh);
  return fresh;
}

// In mate tasks the longer mate lasts longer; in the others the better defence, which has the lower value.
function lastingOf(reply: BookRow['replies'][number] | undefined): number {
  if (reply === undefined) return Number.NEGATIVE_INFINITY;
  return reply.mateIn ?? (reply.value === null ? 0 : -reply.value);
}
