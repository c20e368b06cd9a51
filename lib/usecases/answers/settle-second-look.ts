// The host settles a second look (rule A2): the mark stands, or another outcome takes its place. Word,
// mark and log are one transaction; a person's word after the reveal is the host's word (rule A7).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { parseShortText, REMARK_CHARACTERS, type ShortTextReason } from '#lib/kit/short-text.ts';
import type { Outcome } from '#lib/marking/mark.ts';
import { findAnswer } from '#lib/store/answers.ts';
import { inTransaction, type Tx } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { loadLook, saveLookSettled } from '#lib/store/second-looks.ts';
import { lockSolver } from '#lib/store/solvers.ts';
import { type OverruleReason, overruleWithin } from './overrule-mark.ts';

/** What the host says. `null` for the outcome: the mark stands. */
export interface LookSettlement {
  readonly puzzleId: number;
  readonly answerId: number;
  readonly outcome: Outcome | null;
  /** Points beside a new outcome; null: what the scheme gives. */
  readonly points: number | null;
  /** What the viewer reads; may be empty, then a fixed sentence stands there in the viewer's language. */
  readonly reply: string;
  /** Reason of the overrule where the reply is empty. */
  readonly why: string;
  readonly memberId: number;
}

/** Why it was not settled. `unknown-look`: there is none, it was settled meanwhile, or the answer withdrawn. */
export type SettleLookReason = OverruleReason | ShortTextReason | { readonly code: 'unknown-look' };

/** Settles the look of an answer; gives the number of the mark that changed it, or null. */
export async function settleSecondLook(
  word: LookSettlement,
): Promise<Result<number | null, SettleLookReason>> {
  const reply = parseShortText(word.reply, REMARK_CHARACTERS);
  if (!reply.ok) return reply;
  return inTransaction((tx) => settleWithin(tx, word, reply.value));
}

async function settleWithin(
  tx: Tx,
  word: LookSettlement,
  reply: string,
): Promise<Result<number | null, SettleLookReason>> {
  const { puzzleId, answerId, memberId, outcome, points } = word;
  const answer = await findAnswer(tx, answerId);
  if (answer === null || answer.puzzleId !== puzzleId) return refuse({ code: 'unknown-look' });
  await lockSolver(tx, answer.solverId);
  const look = await loadLook(tx, answerId);
  const isWithdrawn = (await findAnswer(tx, answerId))?.withdrawnAt !== null;
  if (look === null || look.settledAt !== null || isWithdrawn) return refuse({ code: 'unknown-look' });
  let mark: number | null = null;
  if (outcome !== null) {
    const why = reply === '' ? word.why : reply;
    const overruled = await overruleWithin(tx, { answerId, outcome, points, why, memberId });
    if (!overruled.ok) return overruled;
    mark = overruled.value;
  }
  const result = mark === null ? 'stands' : 'changed';
  await saveLookSettled(tx, answerId, { result, reply, memberId });
  const details = { look: look.id, result, mark } as const;
  await appendLog(tx, { kind: 'look-settled', puzzleId, answerId, memberId, details });
  return ok(mark);
}
