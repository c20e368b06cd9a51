// What would a regrade change, and what of it needs the host's word? Rule A7: a pure difference, previewed, then
// applied or cancelled as a whole. Rule A3: where a person has overruled, the new mark is kept beside it.

import { compareMarks } from './compare-marks.ts';
import type { Mark, Outcome } from './mark.ts';
import { pickMarkedAnswers, type TimedAnswer } from './pick-marked-answer.ts';

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
  /** In force, it would let this answer count instead of a better one of the same solver; see `costsItsSolver`. */
  readonly isCostly?: boolean;
}

/** One line of the preview. */
export interface RegradeChange {
  readonly answerId: number;
  readonly from: Outcome;
  readonly to: Outcome;
  readonly points: number;
  readonly direction: 'up' | 'down' | 'level';
  /** Why the host has to say yes to this one by itself; null where it goes along with the whole. */
  readonly wordFor: 'would-fall' | 'would-count' | 'read-out' | null;
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

/**
 * Would anybody see a difference? Outcome, points and the move at which it goes wrong; how much of the line is
 * there (p of r) only where that is said: of an answer that is right in part.
 */
export function isOtherMark(a: GradedMark, b: GradedMark): boolean {
  if (a.outcome !== b.outcome || a.points !== b.points || a.atMove !== b.atMove) return true;
  if (a.outcome === 'solved' || a.outcome === 'slower') return false;
  return a.p !== b.p || (a.p > 0 && a.r !== b.r);
}

/** One answer of a solver, with the mark in force and the one that would take its place. */
export interface OwnAnswer extends Omit<TimedAnswer, 'outcome'> {
  /** Null while unmarked. */
  readonly before: GradedMark | null;
  readonly after: GradedMark | null;
}

/**
 * True where new marks would make another answer of the solver count than counts now, and a worse one: a text
 * that could not be read and now can replaces an earlier, better answer (rule P2). The answers are one
 * solver's to one puzzle, all of them, in the order of their times.
 */
export function costsItsSolver(
  own: readonly OwnAnswer[],
  { countsFirst }: { readonly countsFirst: boolean },
): boolean {
  const counted = (when: 'before' | 'after'): OwnAnswer | null => {
    const timed = own.map((one) => ({ ...one, outcome: one[when]?.outcome ?? null }));
    const id = pickMarkedAnswers(timed, { countsFirst }).find(({ standing }) => standing === 'counted')?.id;
    return own.find((one) => one.id === id) ?? null;
  };
  const [now, then] = [counted('before'), counted('after')];
  if (now === null || now === then || now.before === null) return false;
  return then === null || then.after === null || compareMarks(now.before, then.after) < 0;
}

function toChange(answer: Regraded, isRevealed: boolean): RegradeChange {
  const { answerId, before, after } = answer;
  const order = compareMarks(before, after);
  const direction = order > 0 ? 'up' : order < 0 ? 'down' : 'level';
  const wordFor = isRevealed ? neededWord(answer, direction) : null;
  return {
    answerId,
    from: before.outcome,
    to: after.outcome,
    points: after.points - before.points,
    direction,
    wordFor,
  };
}

function neededWord(
  { isReadOut, isCostly = false }: Regraded,
  direction: RegradeChange['direction'],
): RegradeChange['wordFor'] {
  if (direction === 'down') return 'would-fall';
  if (isCostly) return 'would-count';
  return isReadOut ? 'read-out' : null;
}
