// Which of a solver's answers to a puzzle is the one that counts? Rules P2 (one, the last in time, or the first) and
// P4 (only answers replace one another; a text that speaks to somebody replaces none but on the host's word).

import type { Outcome } from './mark.ts';

/** An answer with what decides. The candidates of a solver come in the order of their times. */
export interface TimedAnswer {
  readonly id: number;
  readonly solverId: number;
  /** How its time lies to opening and close; `uncertain` counts (a coarse time that holds the close). */
  readonly timely: 'in-time' | 'late' | 'early' | 'uncertain';
  /** A reply to somebody, by its source or by its words. */
  readonly isReply: boolean;
  /** Null while unmarked. */
  readonly outcome: Outcome | null;
}

/** Why an answer counts or does not. */
export type PickedStanding = 'waiting' | 'counted' | 'replaced' | 'late' | 'early' | 'no-answer' | 'reply';

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
  const answers = inTime.filter(isAnswer);
  // A text that looks like an answer and cannot be read stands where there is nothing better.
  const unread = inTime.filter(({ outcome }) => outcome === 'unreadable');
  return pick(answers.filter(({ isReply }) => !isReply)) ?? pick(answers) ?? pick(unread);
}

function standingOf(answer: TimedAnswer, counted: TimedAnswer | null): PickedStanding {
  if (answer.outcome === null) return 'waiting';
  if (answer === counted) return 'counted';
  if (answer.timely === 'late' || answer.timely === 'early') return answer.timely;
  if (answer.outcome === 'chatter') return 'no-answer';
  if (answer.isReply && counted !== null && !counted.isReply) return 'reply';
  return counted === null ? 'no-answer' : 'replaced';
}
