// What would a regrade change, and what of it needs the host's word? Rule A7: a pure difference, previewed, then
// applied or cancelled as a whole. Rule A3: where a person has overruled, the new mark is kept beside it.

import { compareMarks } from './compare-marks.ts';
import type { Mark, Outcome } from './mark.ts';

/** What of a mark a regrade compares. */
export type GradedMark = Pick<Mark, 'outcome' | 'points' | 'p' | 'r' | 'atMove'>;

/** One answer before and after. */
export interface Regraded {
  readonly answerId: number;
  readonly before: GradedMark;
  readonly after: GradedMark;
  /** A person's word is in force. */
  readonly isOverruled: boolean;
  /** The solver's name was read out already. */
  readonly isReadOut: boolean;
}

/** One line of the preview. */
export interface RegradeChange {
  readonly answerId: number;
  readonly from: Outcome;
  readonly to: Outcome;
  readonly points: number;
  readonly direction: 'up' | 'down' | 'level';
  /** Why the host has to say yes to this one by itself; null where it goes along with the whole. */
  readonly wordFor: 'would-fall' | 'read-out' | null;
}

/** What a regrade would do. */
export interface RegradePreview {
  /** Every mark that would change, falls first, then by answer. */
  readonly changes: readonly RegradeChange[];
  readonly same: number;
  /** Answers whose mark changes but on which a person's word stands. */
  readonly overruled: readonly number[];
  readonly pointsUp: number;
  readonly pointsDown: number;
}

const DIRECTIONS = ['down', 'level', 'up'] as const;

/** The difference that a regrade would make. Before the reveal nothing needs a word of its own. */
export function previewRegrade(
  answers: readonly Regraded[],
  { isRevealed }: { readonly isRevealed: boolean },
): RegradePreview {
  const changed = answers.filter(({ before, after }) => isOtherMark(before, after));
  const changes = changed
    .filter(({ isOverruled }) => !isOverruled)
    .map((answer) => toChange(answer, isRevealed))
    .sort(
      (a, b) => DIRECTIONS.indexOf(a.direction) - DIRECTIONS.indexOf(b.direction) || a.answerId - b.answerId,
    );
  const sum = (direction: 'up' | 'down') =>
    changes
      .filter((one) => one.direction === direction)
      .reduce((all, { points }) => all + Math.abs(points), 0);
  return {
    changes,
    same: answers.length - changed.length,
    overruled: changed.filter(({ isOverruled }) => isOverruled).map(({ answerId }) => answerId),
    pointsUp: sum('up'),
    pointsDown: sum('down'),
  };
}

/** The answers whose new mark takes force when a preview is applied, given those that the host said yes to. */
export function answersToRegrade(preview: RegradePreview, agreed: ReadonlySet<number>): number[] {
  return preview.changes
    .filter(({ wordFor, answerId }) => wordFor === null || agreed.has(answerId))
    .map(({ answerId }) => answerId);
}

function isOtherMark(a: GradedMark, b: GradedMark): boolean {
  return (
    a.outcome !== b.outcome || a.points !== b.points || a.p !== b.p || a.r !== b.r || a.atMove !== b.atMove
  );
}

function toChange({ answerId, before, after, isReadOut }: Regraded, isRevealed: boolean): RegradeChange {
  const order = compareMarks(before, after);
  const direction = order > 0 ? 'up' : order < 0 ? 'down' : 'level';
  const wordFor = !isRevealed ? null : direction === 'down' ? 'would-fall' : isReadOut ? 'read-out' : null;
  return {
    answerId,
    from: before.outcome,
    to: after.outcome,
    points: after.points - before.points,
    direction,
    wordFor,
  };
}
