// One answer opened at the desk: text and reading, the verdict of every move, the mark in force, and
// beside an overrule what the program found (rules A1, A3).

import { explainMark } from '#lib/marking/explain-mark.ts';
import type { Outcome } from '#lib/marking/mark.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { type AnswerRecord, findAnswer } from '#lib/store/answers.ts';
import { db } from '#lib/store/client.ts';
import { listMarksOf } from '#lib/store/desk-answers.ts';
import { loadCurrentMark, loadProgramMark, type MarkRecord, OUTCOMES } from '#lib/store/marks.ts';
import { loadMember } from '#lib/store/members.ts';
import { oneOf } from '#lib/store/one-of.ts';
import { loadPuzzle, loadPuzzleScheme } from '#lib/store/puzzles.ts';
import { loadLook, type SecondLookRecord } from '#lib/store/second-looks.ts';
import type { Locale } from '#lib/words/locale.ts';
import { buildLedger, type Ledger } from './receipt-ledger.ts';
import { loadTermsShown } from './seen-revisions.ts';

/** A mark that the answer had or has. */
export interface MarkStep {
  readonly id: number;
  readonly outcome: Outcome;
  readonly atMove: number | null;
  /** Unfinished because a move on the way mates later and the text stops before. */
  readonly isSlowerNotShown: boolean;
  readonly points: number;
  /** Sign-in name of who overruled; null for the program. */
  readonly by: string | null;
  readonly why: string | null;
  readonly isCurrent: boolean;
  readonly at: Date;
}

/** The answer with everything about its mark. */
export interface DeskMark {
  readonly answer: AnswerRecord;
  readonly fen: string;
  readonly mark: MarkRecord | null;
  readonly explanation: string | null;
  readonly mostPoints: number;
  readonly ledger: Ledger | null;
  /** What the program found, where a person said otherwise. */
  readonly program: MarkRecord | null;
  readonly history: readonly MarkStep[];
  readonly outcomes: readonly Outcome[];
  /** The second look that its viewer asked for; null where none was. */
  readonly look: SecondLookRecord | null;
  /** Sign-in name of who settled it; null while it waits or after the member was removed. */
  readonly lookBy: string | null;
}

function isSlowerNotShown(reason: unknown): boolean {
  return typeof reason === 'object' && reason !== null && Reflect.get(reason, 'code') === 'slower-not-shown';
}

/** Opens an answer; null where the puzzle has none of that number. */
export async function showMark(asked: {
  readonly puzzleId: number;
  readonly answerId: number;
  readonly locale: Locale;
}): Promise<DeskMark | null> {
  const tx = db();
  const answer = await findAnswer(tx, asked.answerId);
  const puzzle = answer === null ? null : await loadPuzzle(tx, { id: answer.puzzleId });
  if (answer === null || answer.puzzleId !== asked.puzzleId || puzzle === null) return null;
  const mark = await loadCurrentMark(tx, answer.id);
  const { terms } = await loadTermsShown(tx, puzzle, { answer, marked: mark?.revision ?? null });
  const start = parseFen(terms.fen);
  if (!start.ok) throw new Error(`not a position: ${terms.fen}`);
  const program = mark?.overrule == null ? null : await loadProgramMark(tx, answer.id);
  const look = await loadLook(tx, answer.id);
  const history = await listMarksOf(tx, answer.id);
  return {
    answer,
    fen: terms.fen,
    mark,
    explanation: mark === null ? null : explainMark(program ?? mark, terms, asked.locale),
    mostPoints: (await loadPuzzleScheme(tx, puzzle)).solved,
    ledger:
      mark === null ? null : buildLedger({ ...(program ?? mark), start: start.value, line: mark.line ?? [] }),
    program,
    history: history.map((one) => ({
      id: one.id,
      outcome: oneOf(OUTCOMES, one.outcome),
      atMove: one.atMove,
      isSlowerNotShown: isSlowerNotShown(one.reason),
      points: one.points,
      by: one.madeBy === 'person' ? (one.member?.signInName ?? '') : null,
      why: one.why,
      isCurrent: one.isCurrent,
      at: one.createdAt,
    })),
    outcomes: OUTCOMES,
    look,
    lookBy: look?.memberId == null ? null : ((await loadMember(tx, look.memberId))?.signInName ?? null),
  };
}
