// What stands in the text after the point that decided? Rule O0: shown, with verdicts where the book has them;
// it earns and costs nothing. Rule O1: after a finished line a wrong move is flagged, so that nobody reads it out.

import type { TreeNode } from '#lib/book/position-tree.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { MarkedMove } from '../mark.ts';
import { markedMove, verdictAt } from './verdict-at.ts';
import type { LineToWalk, Walk } from './walk.ts';
import { movesLeftAt, type WalkContext } from './walk-context.ts';

/** The rest of a line. */
export interface Beyond {
  /** Moves from where the walk ended, gaps filled with any reply that fits. */
  readonly moves: readonly Uci[];
  /** Verdicts on its solver moves, as far as they are known without a hole. */
  readonly verdicts: readonly MarkedMove[];
  /** Written moves of the line that could be shown, from its beginning. */
  readonly used: number;
  /** A later solver move slips or cannot be played. */
  readonly goesWrong: boolean;
}

/** Written moves shown behind the deciding point; a text that goes on for longer is cut there, at no cost. */
const MOST_SHOWN = 40;

/** Plays out what is left of a line after its walk; asks the book for nothing. */
export function goBeyond(context: WalkContext, { line, endsImpossible }: LineToWalk, walk: Walk): Beyond {
  const quiet: WalkContext = { ...context, isAsking: false };
  const moves: Uci[] = [];
  const verdicts: MarkedMove[] = [];
  let node = walk.node;
  let goesWrong = false;
  let isKnown = true;
  let used = walk.used;
  const last = Math.min(line.length, walk.used + MOST_SHOWN);
  for (; used < last; used += 1) {
    const written = line[used];
    if (written === undefined) break;
    if (written.by === 'solver' && node.ply % 2 === 1) {
      const filled = fillAnyhow(context, node, written.uci);
      if (filled === null) break;
      moves.push(filled.move ?? '');
      node = filled;
    }
    const isSolver = node.ply % 2 === 0;
    const next = (written.by === 'solver') === isSolver ? context.facts.tree.play(node, written.uci) : null;
    if (next === null) break;
    if (isSolver) {
      const found = judgeBeyond(quiet, node, next);
      goesWrong ||= found === 'wrong' || (typeof found === 'object' && found.verdict === 'slips');
      isKnown &&= typeof found === 'object';
      if (isKnown && typeof found === 'object') verdicts.push(found);
    }
    moves.push(written.uci);
    node = next;
  }
  return { moves, verdicts, used, goesWrong: goesWrong || endsImpossible || used < last };
}

// In a mate task the last move has to mate, book or no book.
function judgeBeyond(context: WalkContext, node: TreeNode, next: TreeNode): MarkedMove | 'wrong' | 'unknown' {
  const verdict = verdictAt(context, node, next);
  if (verdict === 'lacking' || verdict === 'refused') {
    return (movesLeftAt(context.facts.terms, node) ?? 2) <= 1 ? 'wrong' : 'unknown';
  }
  return markedMove(next.move ?? '', verdict);
}

function fillAnyhow(context: WalkContext, node: TreeNode, move: Uci): TreeNode | null {
  const { tree } = context.facts;
  let any: TreeNode | null = null;
  for (const reply of tree.moves(node)) {
    const after = tree.play(node, reply);
    const next = after === null ? null : tree.play(after, move);
    if (next?.end === 'checkmate') return after;
    if (next !== null) any ??= after;
  }
  return any;
}
