// What has a walk earned? p of r and points: rules O0 and P1.

import { movesTo } from '#lib/book/position-tree.ts';
import type { Ranked } from '../compare-marks.ts';
import { pointsFor } from '../schemes.ts';
import type { Walk } from './walk.ts';
import type { PuzzleFacts } from './walk-context.ts';

/** The walk as the order of rule O0 sees it. A walk that waits for verdicts has no place in it: our own mistake. */
export function earnedBy(facts: PuzzleFacts, walk: Walk): Ranked {
  const { outcome, p, atMove } = walk;
  if (outcome === 'lacking') throw new Error('a walk without its verdicts cannot be ranked');
  const first = walk.verdicts[0] ?? null;
  const needed = facts.needed(first, movesTo(walk.node));
  const isFinished = outcome === 'solved' || outcome === 'slower';
  const r = isFinished ? needed : Math.max(needed, p + 1);
  const points = Math.max(
    walk.atLeast,
    pointsFor(facts.scheme, { outcome, p, r, first: first?.verdict ?? null }),
  );
  return { outcome, points, p, r, atMove };
}
