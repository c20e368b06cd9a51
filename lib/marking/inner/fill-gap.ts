// Which reply fills a gap? Rule O3: of all replies after which the next written move is legal, the one on which
// the answer does best; a reply that is not adequate counts as weak.

import type { Uci } from '#lib/rules/move.ts';
import { bestOf } from '../compare-marks.ts';
import { earnedBy } from './earned-by.ts';
import { repliesAt } from './replies-at.ts';
import { type LineToWalk, type Standing, stopWalk, type Walk } from './walk.ts';
import { MOST_FILLINGS, type WalkContext } from './walk-context.ts';

/** A gap: where the walk stands, and how it goes on after a reply. */
export interface Gap {
  readonly standing: Standing;
  readonly goOn: (reply: Uci) => Walk;
}

/** Goes on from a solver move that is followed by the solver's next move. */
export function fillGap(context: WalkContext, line: LineToWalk, gap: Gap): Walk {
  const { facts } = context;
  const { standing, goOn } = gap;
  const replies = repliesAt(facts, standing.node, standing.row);
  const possible = [...facts.tree.moves(standing.node)].sort(replies.compare);
  const adequate = possible.filter(replies.isAdequate);
  const best = tryReplies(context, line, { ...gap, replies: adequate });
  // Nothing that a weak reply allows is better than a line finished or waiting for its verdicts.
  if (best?.outcome === 'solved' || best?.outcome === 'lacking' || best?.because === 'too-many-fillings')
    return best;
  const weak = possible.find(
    (reply) => !replies.isAdequate(reply) && isNextLegal(context, line, standing, reply),
  );
  const weakWalk = weak === undefined ? null : goOn(weak);
  const candidates = [best, weakWalk].filter((walk) => walk !== null);
  if (candidates.length > 0) return pick(context, candidates);
  return stopWalk(standing, 'impossible', standing.verdicts.length + 1);
}

function tryReplies(
  context: WalkContext,
  line: LineToWalk,
  { standing, goOn, replies }: Gap & { readonly replies: readonly Uci[] },
): Walk | null {
  const walks: Walk[] = [];
  for (const reply of replies) {
    if (!isNextLegal(context, line, standing, reply)) continue;
    context.allowance.fillings += 1;
    if (context.allowance.fillings > MOST_FILLINGS) {
      return { ...stopWalk(standing, 'unclear', null), because: 'too-many-fillings' };
    }
    const walk = goOn(reply);
    if (walk.outcome === 'solved' || walk.because === 'too-many-fillings') return walk;
    walks.push(walk);
  }
  if (walks.length === 0) return null;
  return walks.find(({ outcome }) => outcome === 'lacking') ?? pick(context, walks);
}

function isNextLegal(context: WalkContext, line: LineToWalk, standing: Standing, reply: Uci): boolean {
  const { tree } = context.facts;
  const after = tree.play(standing.node, reply);
  const next = line.line[standing.at];
  return after !== null && next !== undefined && tree.play(after, next.uci) !== null;
}

function pick(context: WalkContext, walks: readonly Walk[]): Walk {
  const ranked = walks.map((walk) => ({ walk, ...earnedBy(context.facts, walk) }));
  const best = bestOf(ranked);
  return best.walk.outcome === 'unclear' ? { ...best.walk, p: best.p, atLeast: best.points } : best.walk;
}
