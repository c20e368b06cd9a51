// The host takes the last word on a group back: it is marked again as if nothing had been said, and
// returns to the list. After the reveal an overrule gives way at once to what the program had found (rule A7).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { ring } from '#lib/queue/enqueue.ts';
import { findAnswer } from '#lib/store/answers.ts';
import { db, inTransaction, type Tx } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { loadProgramMark, restoreMark } from '#lib/store/marks.ts';
import { holdMarking, holdReveal } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { takeBackSettlement } from '#lib/store/settlements.ts';
import { lockSolver } from '#lib/store/solvers.ts';
import { gradeAgain } from './grade-again.ts';
import { renewStandings } from './renew-standings.ts';

/** Undoes what this member said under this reason; gives how many answers are marked again. */
export async function undoSettlement(said: {
  readonly puzzleId: number;
  readonly memberId: number;
  readonly why: string;
}): Promise<Result<number, { readonly code: 'nothing-to-undo' }>> {
  const { puzzleId, memberId } = said;
  const undone = await inTransaction(async (tx) => {
    // Marks that are just being written still know what is taken back.
    await holdMarking(tx, puzzleId);
    const { rulings, answers, marks } = await takeBackSettlement(tx, said);
    if (rulings.length === 0 && answers.length === 0) return refuse({ code: 'nothing-to-undo' } as const);
    const restored = (await holdReveal(tx, puzzleId))
      ? await restoreMarks(tx, puzzleId, answers)
      : new Map<number, number>();
    const open = rulings.length > 0 ? 'all' : answers.filter((id) => !restored.has(id));
    const again = await gradeAgain(tx, { id: puzzleId }, { answers: open, reason: said.why, memberId });
    const changed = [...marks].map(([answer, from]) => ({ answer, from, to: restored.get(answer) ?? null }));
    const details = { rulings: [...rulings], answers: [...answers], changed };
    await appendLog(tx, { kind: 'settlement-undone', puzzleId, memberId, details });
    return ok(open === 'all' ? again : again + restored.size);
  }, 60_000);
  if (undone.ok) await ring(db(), 'mark-answers', { puzzleId });
  return undone;
}

// What is public does not stand without a mark until the worker comes. Gives the mark that is in force
// again of each answer that has one.
async function restoreMarks(
  tx: Tx,
  puzzleId: number,
  answers: readonly number[],
): Promise<Map<number, number>> {
  const puzzle = await loadPuzzle(tx, { id: puzzleId });
  const restored = new Map<number, number>();
  const solvers: number[] = [];
  for (const answerId of answers) {
    const answer = await findAnswer(tx, answerId);
    const mark = await loadProgramMark(tx, answerId);
    if (answer === null || answer.withdrawnAt !== null || mark === null) continue;
    await lockSolver(tx, answer.solverId);
    restored.set(answerId, await restoreMark(tx, mark));
    solvers.push(answer.solverId);
  }
  if (puzzle !== null && solvers.length > 0) await renewStandings(tx, puzzle, solvers);
  return restored;
}
