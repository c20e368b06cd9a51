// What stands in the text after the point that decided? Rule O0: shown, with verdicts where the book has them;
// it earns and costs nothing. Rule O1: after a finished line a wrong move is flagged, so that nobody reads it out.

import type { TreeNode } from '#lib/book/position-tree.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { MarkedMove } from '../mark.ts';
import { markedMove, verdictAt } from './verdict-at.ts';
import type { LineToWalk, Walk } from './walk.ts';
import { movesLeftAt, type PuzzleFacts, type WalkContext } from './walk-context.ts';

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
      const filled = fillKindly(quiet, node, written.uci);
      if (filled === null) break;
      moves.push(filled.move ?? '');
      node = filled;
    }
    const isSolver = node.ply % 2 === 0;
    const next = (written.by === 'solver') === isSolver ? context.facts.tree.play(node, written.uci) : null;
    if (next === null) break;
    if (isSolver) {
      const found = judgeBeyond(quiet, node, next);
      goesWrong ||= isWrong(found);
      isKnown &&= typeof found === 'object';
      if (isKnown && typeof found === 'object') verdicts.push(found);
    }
    moves.push(written.uci);
    node = next;
  }
  return { moves, verdicts, used, goesWrong: goesWrong || endsImpossible || used < last };
}

// Where the book is silent a move is not called wrong. The last move of a mate task needs no book: it is wrong
// where no mate follows even one move later (rule V1: else it is merely slower).
function judgeBeyond(context: WalkContext, node: TreeNode, next: TreeNode): MarkedMove | 'wrong' | 'unknown' {
  const { facts } = context;
  const verdict = verdictAt(context, node, next);
  if (verdict === 'lacking' || verdict === 'refused') {
    return movesLeftAt(facts.terms, node) === 1 && !isMateNext(facts, next) ? 'wrong' : 'unknown';
  }
  return markedMove(next.move ?? '', verdict);
}

function isWrong(found: MarkedMove | 'wrong' | 'unknown'): boolean {
  return found === 'wrong' || (typeof found === 'object' && found.verdict === 'slips');
}

/** Is it mate in one whatever the reply? */
function isMateNext({ tree }: PuzzleFacts, node: TreeNode): boolean {
  return tree.moves(node).every((reply) => {
    const after = tree.play(node, reply);
    return after !== null && tree.moves(after).some((move) => tree.play(after, move)?.end === 'checkmate');
  });
}

// Of the replies after which the next move can be played the first that it mates after, else the first after
// which it is not wrong (rule O3: the one on which the answer does best).
function fillKindly(context: WalkContext, node: TreeNode, move: Uci): TreeNode | null {
  const { tree } = context.facts;
  const possible: { readonly after: TreeNode; readonly next: TreeNode }[] = [];
  for (const reply of tree.moves(node)) {
    const after = tree.play(node, reply);
    const next = after === null ? null : tree.play(after, move);
    if (after !== null && next !== null) possible.push({ after, next });
  }
  const best =
    possible.find(({ next }) => next.end === 'checkmate') ??
    possible.find(({ after, next }) => !isWrong(judgeBeyond(context, after, next))) ??
    possible[0];
  return best?.after ?? null;
}
