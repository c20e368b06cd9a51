// A host overrules an outcome with a reason; what the program found stays visible beside it (rule A3).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import type { Outcome } from '#lib/marking/mark.ts';
import { pointsFor, type Scheme } from '#lib/marking/schemes.ts';
import { findAnswer } from '#lib/store/answers.ts';
import { inTransaction, type Tx } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { appendOverrule, loadCurrentMark, type MarkRecord, type NewMark } from '#lib/store/marks.ts';
import { loadPuzzle, loadPuzzleScheme } from '#lib/store/puzzles.ts';
import { lockSolver } from '#lib/store/solvers.ts';
import { renewStandings } from './renew-standings.ts';

/** The host's word. Points null: what the scheme gives for the outcome. */
export interface Overrule {
  readonly answerId: number;
  readonly outcome: Outcome;
  readonly points: number | null;
  readonly why: string;
  readonly memberId: number;
}

/** Why it was not done. */
export type OverruleReason =
  | { readonly code: 'unknown-answer' }
  | { readonly code: 'withdrawn' }
  | { readonly code: 'not-marked-yet' }
  | { readonly code: 'why-empty' }
  | { readonly code: 'points'; readonly least: 0; readonly most: number };

/** Overrules one answer; gives the number of the mark now in force. */
export function overruleMark(overrule: Overrule): Promise<Result<number, OverruleReason>> {
  return inTransaction((tx) => overruleWithin(tx, overrule));
}

/** The same within a transaction of the caller's. */
export async function overruleWithin(tx: Tx, overrule: Overrule): Promise<Result<number, OverruleReason>> {
  const { answerId, outcome, memberId } = overrule;
  const why = overrule.why.trim();
  if (why === '') return refuse({ code: 'why-empty' });
  const found = await findAnswer(tx, answerId);
  if (found === null) return refuse({ code: 'unknown-answer' });
  await lockSolver(tx, found.solverId);
  // A withdrawal holds the solver too: what is read from here on stays true until the commit.
  const answer = (await findAnswer(tx, answerId)) ?? found;
  if (answer.withdrawnAt !== null) return refuse({ code: 'withdrawn' });
  const former = await loadCurrentMark(tx, answerId);
  const puzzle = await loadPuzzle(tx, { id: answer.puzzleId });
  if (former === null || puzzle === null) return refuse({ code: 'not-marked-yet' });
  const scheme = await loadPuzzleScheme(tx, puzzle);
  if (overrule.points !== null && !(overrule.points >= 0 && overrule.points <= scheme.solved))
    return refuse({ code: 'points', least: 0, most: scheme.solved });
  const points = overrule.points ?? pointsByHand(former, outcome, scheme);
  const { id, formerId } = await appendOverrule(tx, overruled(former, { outcome, points, why, memberId }));
  await renewStandings(tx, puzzle, [answer.solverId]);
  await appendLog(tx, {
    kind: 'mark-overruled',
    puzzleId: answer.puzzleId,
    answerId,
    memberId,
    details: { from: formerId, to: id, outcome, points },
  });
  return ok(id);
}

/** What the scheme gives where a person says the outcome: moves counted before stay counted where the outcome lets them. */
export function pointsByHand(former: MarkRecord, outcome: Outcome, scheme: Scheme): number {
  const { r } = former;
  switch (outcome) {
    case 'solved':
      return pointsFor(scheme, { outcome, p: r, r, first: 'holds' });
    case 'slower':
      return pointsFor(scheme, { outcome, p: former.p, r, first: 'slower' });
    case 'wrong':
    case 'unreadable':
    case 'chatter':
      return pointsFor(scheme, { outcome, p: 0, r, first: null });
    default: {
      const first = former.p > 0 ? 'holds' : (former.verdicts[0]?.verdict ?? null);
      return pointsFor(scheme, { outcome, p: former.p, r, first });
    }
  }
}

function overruled(
  former: MarkRecord,
  by: { outcome: Outcome; points: number; why: string; memberId: number },
): NewMark {
  const { id: _, isCurrent: __, createdAt: ___, flags, ...rest } = former;
  return {
    ...rest,
    flags,
    outcome: by.outcome,
    points: by.points,
    reason: { code: 'overruled', params: {} },
    doubt: null,
    overrule: { memberId: by.memberId, why: by.why },
  };
}
