// Which of a solver's answers to a puzzle counts? Rules P2 (one, the last in time, or the first) and
// P4 (only answers replace one another; a reply to somebody replaces none).

import type { Standing } from '#lib/store/answers.ts';
import type { Candidate } from '#lib/store/standing-of-answers.ts';

function isAnswer(candidate: Candidate): boolean {
  return candidate.outcome !== null && candidate.outcome !== 'chatter' && candidate.outcome !== 'unreadable';
}

/** The one that counts among a solver's answers in order of time; null where none does. */
function chooseCounted(candidates: readonly Candidate[], countsFirst: boolean): Candidate | null {
  const inTime = candidates.filter((one) => one.timely === 'in-time' || one.timely === 'uncertain');
  const pick = (list: readonly Candidate[]) => (countsFirst ? list[0] : list.at(-1)) ?? null;
  const answers = inTime.filter(isAnswer);
  const plain = answers.filter((one) => !one.isReply);
  // A text that looks like an answer and cannot be read stands where there is nothing better.
  const unread = inTime.filter((one) => one.outcome === 'unreadable');
  return pick(plain) ?? pick(answers) ?? pick(unread);
}

function standingOf(one: Candidate, counted: Candidate | null): Standing {
  if (one.outcome === null) return 'waiting';
  if (one === counted) return 'counted';
  if (one.timely === 'late' || one.timely === 'early') return one.timely;
  if (!isAnswer(one) && one.outcome === 'chatter') return 'no-answer';
  if (one.isReply && counted !== null && !counted.isReply) return 'reply';
  return counted === null ? 'no-answer' : 'replaced';
}

/** The standing of every candidate; `candidates` are of one puzzle, by solver and then by time. */
export function decideStandings(
  candidates: readonly Candidate[],
  countsFirst: boolean,
): { readonly id: number; readonly standing: Standing }[] {
  const bySolver = Map.groupBy(candidates, (one) => one.solverId);
  return [...bySolver.values()].flatMap((own) => {
    const counted = chooseCounted(own, countsFirst);
    return own.map((one) => ({ id: one.id, standing: standingOf(one, counted) }));
  });
}
