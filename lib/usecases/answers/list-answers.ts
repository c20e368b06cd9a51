// The answers of a puzzle as the desk lists them, a page at a time.

import { db } from '#lib/store/client.ts';
import { type AnswerLine, countByOutcome, listAnswerLines } from '#lib/store/desk-answers.ts';
import { OUTCOMES } from '#lib/store/marks.ts';

/** A page of answers. */
export interface AnswersPage {
  readonly lines: readonly AnswerLine[];
  readonly counts: Awaited<ReturnType<typeof countByOutcome>>;
  /** The outcome that is asked for; null for all. */
  readonly outcome: (typeof OUTCOMES)[number] | null;
  /** Where the next page begins; null on the last. */
  readonly next: number | null;
}

const PAGE = 100;

/** Lists answers newest first. The caller has made sure that the puzzle is the host's. */
export async function listAnswers(asked: {
  readonly puzzleId: number;
  readonly below: number | null;
  readonly outcome: string | null;
}): Promise<AnswersPage> {
  const outcome = OUTCOMES.find((one) => one === asked.outcome) ?? null;
  const lines = await listAnswerLines(db(), { ...asked, outcome, most: PAGE + 1 });
  const shown = lines.slice(0, PAGE);
  return {
    lines: shown,
    counts: await countByOutcome(db(), asked.puzzleId),
    outcome,
    next: lines.length > PAGE ? (shown.at(-1)?.id ?? null) : null,
  };
}
