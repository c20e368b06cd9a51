// The walk of rule O0: a line from the left, up to the first thing that decides. Gaps are filled on the way
// (rule O3).

import type { TreeNode } from '#lib/book/position-tree.ts';
import type { Uci } from '#lib/rules/move.ts';
import { fillGap } from './fill-gap.ts';
import { endByReply, isFinishedByMove } from './is-finished.ts';
import { repliesAt } from './replies-at.ts';
import { markedMove, type VerdictAt, verdictAt } from './verdict-at.ts';
import { type LineToWalk, type Standing, stopWalk, type Walk } from './walk.ts';
import type { WalkContext } from './walk-context.ts';

/** Walks a line from the puzzle's position. */
export function walkLine(context: WalkContext, line: LineToWalk): Walk {
  const start: Standing = {
    node: context.facts.tree.root,
    at: 0,
    p: 0,
    slowerAt: null,
    verdicts: [],
    row: null,
  };
  return walkSolverMove(context, line, start);
}

/** From a position with the solver to move. */
function walkSolverMove(context: WalkContext, line: LineToWalk, standing: Standing): Walk {
  const { node, at, verdicts } = standing;
  const number = verdicts.length + 1;
  const written = line.line[at];
  if (written === undefined)
    return stopWalk(standing, line.endsImpossible ? 'impossible' : 'unfinished', number);
  const next = context.facts.tree.play(node, written.uci);
  if (next === null) return stopWalk(standing, 'impossible', number);
  const verdict = verdictAt(context, node, next);
  if (verdict === 'lacking') return stopWalk(standing, 'lacking', number);
  if (verdict === 'refused') return { ...stopWalk(standing, 'unclear', number), because: 'not-verified' };
  const after = standingAfter(standing, next, verdict);
  switch (verdict.verdict) {
    case 'slips':
      return stopWalk(after, number === 1 ? 'wrong' : 'slipped', number);
    case 'unclear':
      return { ...stopWalk(after, 'unclear', number), because: 'verdict' };
    case 'holds':
    case 'slower':
      return walkAfterGoodMove(context, line, { after, verdict });
  }
}

function standingAfter(standing: Standing, next: TreeNode, verdict: VerdictAt): Standing {
  const { verdict: word, row } = verdict;
  const number = standing.verdicts.length + 1;
  const isGood = word === 'holds' && standing.slowerAt === null;
  return {
    node: next,
    at: standing.at + 1,
    p: standing.p + (isGood ? 1 : 0),
    slowerAt: standing.slowerAt ?? (word === 'slower' ? number : null),
    verdicts: [...standing.verdicts, markedMove(next.move ?? '', verdict)],
    row,
  };
}

function walkAfterGoodMove(
  context: WalkContext,
  line: LineToWalk,
  { after, verdict }: { readonly after: Standing; readonly verdict: VerdictAt },
): Walk {
  if (isFinishedByMove(context.facts, after.node, { verdict, good: after.p })) return finish(after);
  const written = line.line[after.at];
  if (written?.by === 'solver') {
    const goOn = (reply: Uci) => walkReply(context, line, { standing: after, reply, isWritten: false });
    return fillGap(context, line, { standing: after, goOn });
  }
  if (written !== undefined)
    return walkReply(context, line, { standing: after, reply: written.uci, isWritten: true });
  if (!line.endsImpossible) return stopWalk(after, 'unfinished', null);
  return stopWalk(after, 'impossible', after.verdicts.length + (line.isSolverOnly ? 1 : 0));
}

/** Takes a reply, written or filled in, and goes on. */
function walkReply(
  context: WalkContext,
  line: LineToWalk,
  {
    standing,
    reply,
    isWritten,
  }: { readonly standing: Standing; readonly reply: Uci; readonly isWritten: boolean },
): Walk {
  const { node, at } = standing;
  const next = context.facts.tree.play(node, reply);
  if (next === null) return stopWalk(standing, 'impossible', standing.verdicts.length);
  const after = { ...standing, node: next, at: isWritten ? at + 1 : at };
  if (!repliesAt(context.facts, node, standing.row).isAdequate(reply)) {
    return { ...stopWalk(after, 'unfinished', null), because: 'weak-defence' };
  }
  const end = endByReply(context.facts, next);
  if (end === 'finished') return finish(after);
  if (end === 'drawn') return drawnByReply(after);
  if (line.line[after.at] !== undefined || line.endsImpossible) return walkSolverMove(context, line, after);
  return stopWalk(after, 'unfinished', null);
}

function finish(standing: Standing): Walk {
  return stopWalk(standing, standing.slowerAt === null ? 'solved' : 'slower', null);
}

// The solver's last move let the position come a third time or run into a dead draw (rule V5). It keeps its place in
// p: the text cut off before the reply has it too (rule P3).
function drawnByReply(standing: Standing): Walk {
  const number = standing.verdicts.length;
  const verdicts = standing.verdicts.map((move, at) =>
    at === number - 1 ? { ...move, verdict: 'slips' as const, by: standing.node.move } : move,
  );
  const walk = stopWalk({ ...standing, verdicts }, number === 1 ? 'wrong' : 'slipped', number);
  return { ...walk, because: 'drawn-by-reply' };
}
