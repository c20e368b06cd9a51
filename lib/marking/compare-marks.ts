// Which of two marks is the better? The order that rule O0 gives, used wherever the rules say best or worst.

import type { Outcome } from './mark.ts';

/** What the order looks at. */
export interface Ranked {
  readonly outcome: Outcome;
  readonly points: number;
  readonly p: number;
  readonly r: number;
  readonly atMove: number | null;
}

/** Best first. `unclear` and `ambiguous` have no place of their own in the order: see `bestOf`. */
const ORDER: readonly Outcome[] = [
  'solved',
  'slower',
  'unfinished',
  'unclear',
  'ambiguous',
  'slipped',
  'impossible',
  'wrong',
  'unreadable',
  'chatter',
];

/** Negative where `a` is the better, positive where `b` is, 0 where the order makes no difference. */
export function compareMarks(a: Ranked, b: Ranked): number {
  if (a.points !== b.points) return b.points - a.points;
  if (a.outcome !== b.outcome) return ORDER.indexOf(a.outcome) - ORDER.indexOf(b.outcome);
  switch (a.outcome) {
    case 'unfinished':
      return b.p / b.r - a.p / a.r;
    case 'slipped':
    case 'impossible':
      return (b.atMove ?? 0) - (a.atMove ?? 0);
    default:
      return 0;
  }
}

/**
 * The best of some candidates, the first of equals. If one is `unclear` and none is `solved`, that one:
 * a person may still find it the best. Throws on an empty list.
 */
export function bestOf<T extends Ranked>(candidates: readonly T[]): T {
  const best = candidates.reduce((one, other) => (compareMarks(other, one) < 0 ? other : one));
  const unclear = candidates.find(({ outcome }) => outcome === 'unclear');
  if (best.outcome === 'solved' || unclear === undefined) return best;
  // Meanwhile it earns what is certain, so that writing on never costs (rule P3).
  return best.points > unclear.points ? { ...unclear, points: best.points, p: best.p, r: best.r } : unclear;
}

/** The worst, the first of equals; `unclear` where one is, since a person may still find it the worst. */
export function worstOf<T extends Ranked>(candidates: readonly T[]): T {
  const unclear = candidates.find(({ outcome }) => outcome === 'unclear');
  return unclear ?? candidates.reduce((one, other) => (compareMarks(other, one) > 0 ? other : one));
}
