// The host settles a group of doubtful answers with one word: a ruling on a move or on a text holds
// for everybody, earlier and later (rules V8, R6); anything else overrules each answer of the group.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import type { Outcome } from '#lib/marking/mark.ts';
import { ring } from '#lib/queue/enqueue.ts';
import type { Uci } from '#lib/rules/move.ts';
import { findAnswer } from '#lib/store/answers.ts';
import { db, inTransaction, type Tx } from '#lib/store/client.ts';
import { listDoubtful } from '#lib/store/doubtful.ts';
import { loadTermsOf } from '#lib/store/former-terms.ts';
import { appendLog } from '#lib/store/log.ts';
import { loadCurrentMark } from '#lib/store/marks.ts';
import { holdMarking } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { saveReadingRuling, saveVerdictRuling } from '#lib/store/rulings.ts';
import { lockSolver } from '#lib/store/solvers.ts';
import { findReadingPair, type ReadingPair, textHash, unclearKey } from './doubt-key.ts';
import { gradeAgain } from './grade-again.ts';
import { type OverruleReason, overruleWithin } from './overrule-mark.ts';

/** The host's word on a group. */
export type Settlement =
  /** On an unclear verdict. */
  | { readonly kind: 'verdict'; readonly verdict: 'holds' | 'slips' }
  /** On what a text meant: one of its readings. */
  | { readonly kind: 'reading'; readonly meant: readonly Uci[] }
  /** On each answer of the group. */
  | { readonly kind: 'outcome'; readonly outcome: Outcome; readonly points: number | null };

/** Why it was not settled. */
export type SettleReason =
  | OverruleReason
  | { readonly code: 'unknown-puzzle' }
  | { readonly code: 'group-empty' }
  | { readonly code: 'no-move-to-rule-on' };

/** Settles a group; gives how many answers were in it. */
export async function settleDoubtful(word: {
  readonly puzzleId: number;
  readonly doubt: string;
  readonly settlement: Settlement;
  readonly why: string;
  readonly memberId: number;
}): Promise<Result<number, SettleReason>> {
  const { puzzleId, doubt, settlement, memberId } = word;
  const why = word.why.trim();
  if (why === '') return refuse({ code: 'why-empty' });
  const settled = await inTransaction(async (tx): Promise<Result<number, SettleReason>> => {
    // Marks that are just being written do not know a ruling yet: they are in the group, and marked again by it.
    if (settlement.kind !== 'outcome') await holdMarking(tx, puzzleId);
    const answers = await listDoubtful(tx, puzzleId, doubt);
    const [first] = answers;
    if (first === undefined) return refuse({ code: 'group-empty' });
    switch (settlement.kind) {
      case 'verdict':
        return ruleOnMove(tx, { puzzleId, answerId: first, verdict: settlement.verdict, why, memberId });
      case 'reading':
        return ruleOnText(tx, { puzzleId, answers, meant: settlement.meant, why, memberId });
      case 'outcome':
        return overruleGroup(tx, { answers, doubt, settlement, why, memberId });
    }
  }, 60_000);
  if (settled.ok) await ring(db(), 'mark-answers', { puzzleId });
  return settled;
}

/** Each answer of the group by itself; those that were withdrawn or settled meanwhile are left out. */
async function overruleGroup(
  tx: Tx,
  word: {
    readonly answers: readonly number[];
    readonly doubt: string;
    readonly settlement: Extract<Settlement, { kind: 'outcome' }>;
    readonly why: string;
    readonly memberId: number;
  },
): Promise<Result<number, SettleReason>> {
  const { answers, doubt, settlement, why, memberId } = word;
  const { outcome, points } = settlement;
  let settled = 0;
  for (const answerId of answers) {
    const answer = await findAnswer(tx, answerId);
    if (answer === null) continue;
    await lockSolver(tx, answer.solverId);
    if ((await loadCurrentMark(tx, answerId))?.doubt !== doubt) continue;
    const done = await overruleWithin(tx, { answerId, outcome, points, why, memberId });
    // Wrong points are wrong for all: the first is refused, and nothing is written.
    if (!done.ok && done.reason.code !== 'withdrawn') return done;
    if (done.ok) settled += 1;
  }
  return settled === 0 ? refuse({ code: 'group-empty' }) : ok(settled);
}

/** A ruling on the move at which the group's answers are unclear; all answers are marked again. */
async function ruleOnMove(
  tx: Tx,
  ruling: { puzzleId: number; answerId: number; verdict: 'holds' | 'slips'; why: string; memberId: number },
): Promise<Result<number, SettleReason>> {
  const { puzzleId, answerId, verdict, why, memberId } = ruling;
  const puzzle = await loadPuzzle(tx, { id: puzzleId });
  const mark = await loadCurrentMark(tx, answerId);
  if (puzzle === null || mark === null) return refuse({ code: 'unknown-puzzle' });
  const key = unclearKey(await loadTermsOf(tx, puzzle, mark.revision), mark);
  if (key === null) return refuse({ code: 'no-move-to-rule-on' });
  const id = await saveVerdictRuling(tx, puzzleId, { ...key, verdict, reason: why, memberId });
  const waiting = await gradeAgain(tx, puzzle, { answers: 'all', reason: why, memberId });
  const details = { ruling: id, of: 'verdict', waiting } as const;
  await appendLog(tx, { kind: 'ruling-made', puzzleId, memberId, details });
  return ok(waiting);
}

/** A ruling on which of two readings is meant, for all texts that part there, or on what a text meant, for all that are the same. */
async function ruleOnText(
  tx: Tx,
  word: {
    puzzleId: number;
    answers: readonly number[];
    meant: readonly Uci[];
    why: string;
    memberId: number;
  },
): Promise<Result<number, SettleReason>> {
  const { puzzleId, answers, meant, why, memberId } = word;
  const answer = await findAnswer(tx, answers[0] ?? 0);
  const puzzle = await loadPuzzle(tx, { id: puzzleId });
  if (answer === null || puzzle === null) return refuse({ code: 'unknown-answer' });
  const mark = await loadCurrentMark(tx, answer.id);
  const fen = mark === null ? null : (await loadTermsOf(tx, puzzle, mark.revision)).fen;
  const pair = mark === null || fen === null ? null : findReadingPair(fen, mark);
  const line = pair === null ? null : lineInPair(pair, meant);
  const ruling =
    pair === null || line === null
      ? { textHash: textHash(answer.text), meant }
      : { textHash: pair.key, meant: line };
  const id = await saveReadingRuling(tx, puzzleId, { ...ruling, reason: why, memberId });
  await gradeAgain(tx, puzzle, { answers, reason: why, memberId });
  const details = { ruling: id, of: 'reading', waiting: answers.length } as const;
  await appendLog(tx, { kind: 'ruling-made', puzzleId, memberId, details });
  return ok(answers.length);
}

/** The meant line up to the move that it parts with; null where it is none of the readings. */
function lineInPair({ common, moves }: ReadingPair, meant: readonly Uci[]): Uci[] | null {
  const chosen = meant[common.length];
  const isOne =
    common.every((move, at) => meant[at] === move) && chosen !== undefined && moves.includes(chosen);
  return isOne ? [...common, chosen] : null;
}
