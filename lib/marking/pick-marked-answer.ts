// Which of a solver's answers to a puzzle is the one that counts? Rules P2 (one, the last in time, or the first) and
// P4 (only answers replace one another; a text that speaks to somebody replaces none but on the host's word). What is
// first seen after the reveal takes the place of no answer that stood there: rules T3 and A7, by their sense.

import type { Outcome } from './mark.ts';

/** An answer with what decides. The candidates of a solver come in the order of their times. */
export interface TimedAnswer {
  readonly id: number;
  readonly solverId: number;
  /** How its time lies to opening and close; `uncertain` counts (a coarse time that holds the close). */
  readonly timely: 'in-time' | 'late' | 'early' | 'uncertain';
  /** A reply to somebody, by its source or by its words. */
  readonly isReply: boolean;
  /** Number of the import that first showed it after the reveal; null or left out where it was there before. */
  readonly seenLateIn?: number | null;
  /** Null while unmarked. */
  readonly outcome: Outcome | null;
}

/** Why an answer counts or does not. */
export type PickedStanding =
  | 'waiting'
  | 'counted'
  | 'replaced'
  | 'late'
  | 'early'
  | 'no-answer'
  | 'reply'
  | 'after-reveal';

/** The standing of every answer of one puzzle; of each solver at most one is `counted`. */
export function pickMarkedAnswers(
  answers: readonly TimedAnswer[],
  { countsFirst }: { readonly countsFirst: boolean },
): { readonly id: number; readonly standing: PickedStanding }[] {
  const bySolver = Map.groupBy(answers, ({ solverId }) => solverId);
  return [...bySolver.values()].flatMap((own) => {
    const counted = pickCounted(own, countsFirst);
    return own.map((answer) => ({ id: answer.id, standing: standingOf(answer, counted) }));
  });
}

function isAnswer({ outcome }: TimedAnswer): boolean {
  return outcome !== null && outcome !== 'chatter' && outcome !== 'unreadable';
}

function pickCounted(own: readonly TimedAnswer[], countsFirst: boolean): TimedAnswer | null {
  const inTime = own.filter(({ timely }) => timely === 'in-time' || timely === 'uncertain');
  const pick = (list: readonly TimedAnswer[]) => (countsFirst ? list[0] : list.at(-1)) ?? null;
  const earliest = Math.min(...inTime.filter(isAnswer).map(placeSeen));
  const answers = inTime.filter((answer) => isAnswer(answer) && placeSeen(answer) === earliest);
  // A text that looks like an answer and cannot be read stands where there is nothing better.
  const unread = inTime.filter(({ outcome }) => outcome === 'unreadable');
  return pick(answers.filter(({ isReply }) => !isReply)) ?? pick(answers) ?? pick(unread);
}

// What was there at the reveal comes first, then import by import: a mark once public is not replaced by itself.
function placeSeen({ seenLateIn }: TimedAnswer): number {
  return seenLateIn ?? 0;
}

function standingOf(answer: TimedAnswer, counted: TimedAnswer | null): PickedStanding {
  if (answer.outcome === null) return 'waiting';
  if (answer === counted) return 'counted';
  if (answer.timely === 'late' || answer.timely === 'early') return answer.timely;
  if (answer.outcome === 'chatter') return 'no-answer';
  if (counted !== null && isAnswer(counted) && placeSeen(answer) > placeSeen(counted)) return 'after-reveal';
  if (answer.isReply && counted !== null && !counted.isReply) return 'reply';
  return counted === null ? 'no-answer' : 'replaced';
}
