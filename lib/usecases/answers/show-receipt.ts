// What the holder of a receipt sees: the answer as sent and as read, and after the reveal its mark.
// Until then nothing here depends on a verdict (rules R8, T2): marks are not even loaded.

import type { PuzzleTerms } from '#lib/book/terms.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { isToken, receiptHash } from '#lib/machine/tokens.ts';
import { explainMark } from '#lib/marking/explain-mark.ts';
import type { PublicPuzzle } from '#lib/puzzle/public-puzzle.ts';
import { stateAt } from '#lib/puzzle/puzzle-state.ts';
import { mayBeSeen } from '#lib/puzzle/what-may-be-seen.ts';
import { readText } from '#lib/reading/read-text.ts';
import type { ReadResult } from '#lib/reading/reading.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { type AnswerRecord, findByReceipt, listAnswersOf } from '#lib/store/answers.ts';
import { db, type Tx } from '#lib/store/client.ts';
import { loadCurrentMark, loadProgramMark, type MarkRecord } from '#lib/store/marks.ts';
import { loadPuzzle, loadPuzzleScheme, type PuzzleRecord } from '#lib/store/puzzles.ts';
import { loadLook } from '#lib/store/second-looks.ts';
import type { Locale } from '#lib/words/locale.ts';
import { asSeen, publicView } from '../puzzles/show-public-puzzle.ts';
import { buildLedger, type Ledger } from './receipt-ledger.ts';
import { loadTermsShown } from './seen-revisions.ts';

/** A receipt as its holder sees it. */
export interface ShownReceipt {
  /** With position and task that the answer is marked on, or that its writer saw (rule A6). */
  readonly puzzle: PublicPuzzle;
  /** The puzzle as it stands now, where that is another. */
  readonly asItStands: PublicPuzzle | null;
  readonly now: Date;
  readonly text: string;
  readonly name: string | null;
  readonly receivedAt: Date;
  readonly isLate: boolean;
  readonly isWithdrawn: boolean;
  /** A later answer of the same person takes its place. */
  readonly isReplaced: boolean;
  readonly read: ReadResult;
  /** The line that was said to be meant; null where it was left open. */
  readonly meant: readonly string[] | null;
  /** Null before the reveal, and where no mark has been made. */
  readonly mark: ShownMark | null;
  /** The second look that was asked for; null where none was, and before the reveal. */
  readonly look: ShownLook | null;
}

/** A second look as the one who asked sees it (rule A2). */
export interface ShownLook {
  readonly words: string;
  readonly askedAt: Date;
  /** Null while it waits, as the next two. */
  readonly settledAt: Date | null;
  readonly result: 'stands' | 'changed' | null;
  /** The host's own words; empty where there are none. */
  readonly reply: string | null;
}

/** A mark as its holder sees it after the reveal. */
export interface ShownMark {
  readonly outcome: MarkRecord['outcome'];
  readonly atMove: number | null;
  /** Unfinished because a move on the way mates later and the text stops before. */
  readonly isSlowerNotShown: boolean;
  readonly flags: readonly string[];
  readonly points: number;
  /** Points of a solved answer under the puzzle's scheme. */
  readonly mostPoints: number;
  readonly explanation: string;
  readonly ledger: Ledger;
  /** The host decided otherwise than the program: the program's outcome stays visible (rule A3). */
  readonly programOutcome: MarkRecord['outcome'] | null;
  /** Why the answer does not count, where it does not. */
  readonly standing: AnswerRecord['standing'];
}

/** The receipt behind a token; an unknown token and an ill-formed one look alike. */
export async function showReceipt(input: {
  readonly token: string;
  readonly locale: Locale;
}): Promise<Result<ShownReceipt, { readonly code: 'unknown-receipt' }>> {
  const tx = db();
  if (!isToken(input.token)) return refuse({ code: 'unknown-receipt' });
  const answer = await findByReceipt(tx, receiptHash(input.token));
  const record = answer === null ? null : await loadPuzzle(tx, { id: answer.puzzleId });
  const current = record === null ? null : await publicView(record, input.locale);
  if (answer === null || record === null || current === null) return refuse({ code: 'unknown-receipt' });
  const siblings = await listAnswersOf(tx, answer.puzzleId, answer.solverId);
  const newest = siblings.filter((one) => one.withdrawnAt === null).at(-1);
  const isSeen = mayBeSeen('own-mark', 'solver', stateAt(record, record.now));
  const mark = isSeen ? await loadCurrentMark(tx, answer.id) : null;
  const { revision, terms } = await loadTermsShown(tx, record, { answer, marked: mark?.revision ?? null });
  const start = parseFen(terms.fen);
  if (!start.ok) throw new Error(`not a position: ${terms.fen}`);
  return ok({
    puzzle: asSeen(current, revision, terms),
    asItStands: revision === record.revision ? null : current,
    now: record.now,
    text: answer.text,
    name: answer.name,
    receivedAt: answer.receivedAt,
    isLate: record.closesAt !== null && answer.receivedAt.getTime() >= record.closesAt.getTime(),
    isWithdrawn: answer.withdrawnAt !== null,
    isReplaced: newest !== undefined && newest.id !== answer.id && !record.countsFirst,
    read: readText({ position: start.value, text: answer.text }),
    meant: answer.meant,
    mark:
      mark === null
        ? null
        : await loadShownMark(tx, mark, { answer, record, start: start.value, terms, locale: input.locale }),
    look: isSeen ? await loadShownLook(tx, answer.id) : null,
  });
}

async function loadShownLook(tx: Tx, answerId: number): Promise<ShownLook | null> {
  const look = await loadLook(tx, answerId);
  if (look === null) return null;
  const { words, askedAt, settledAt, result, reply } = look;
  return { words, askedAt, settledAt, result, reply };
}

async function loadShownMark(
  tx: Tx,
  mark: MarkRecord,
  of: {
    readonly answer: AnswerRecord;
    readonly record: PuzzleRecord;
    readonly start: Position;
    readonly terms: PuzzleTerms;
    readonly locale: Locale;
  },
): Promise<ShownMark> {
  const program = mark.overrule === null ? null : await loadProgramMark(tx, of.answer.id);
  return {
    outcome: mark.outcome,
    atMove: mark.atMove,
    isSlowerNotShown: mark.reason.code === 'slower-not-shown',
    flags: mark.flags,
    points: mark.points,
    mostPoints: (await loadPuzzleScheme(tx, of.record)).solved,
    explanation: explainMark(mark, of.terms, of.locale),
    ledger: buildLedger({ ...mark, start: of.start, line: mark.line ?? [] }),
    programOutcome: program === null || program.outcome === mark.outcome ? null : program.outcome,
    standing: of.answer.standing,
  };
}
