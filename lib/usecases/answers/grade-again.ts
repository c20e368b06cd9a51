// Something that marks rest on has changed: the answers concerned are marked again. Before the reveal that
// is done at once; afterwards a regrade is opened, which the host sees before anything changes (rule A7).

import { enqueue } from '#lib/queue/enqueue.ts';
import type { Tx } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { countInForce } from '#lib/store/marks-in-force.ts';
import { holdReveal } from '#lib/store/puzzle-moments.ts';
import type { PuzzleRecord } from '#lib/store/puzzles.ts';
import { type NewRegrade, openRegrade } from '#lib/store/regrades.ts';
import { putAllBack, putBack, putUnmarkedBack, saveWork } from '#lib/store/work-list.ts';

/** Which answers, and on whose word. */
export interface GradingAgain {
  readonly answers: readonly number[] | 'all';
  /** Why, in the host's words. */
  readonly reason: string;
  readonly memberId: number | null;
}

/**
 * Has answers marked again, within the caller's transaction; gives how many they are. Those without a mark in
 * force go back on the work list also after the reveal: nothing that is public changes by it.
 */
export async function gradeAgain(
  tx: Tx,
  puzzle: Pick<PuzzleRecord, 'id'>,
  { answers, reason, memberId }: GradingAgain,
): Promise<number> {
  if (!(await holdReveal(tx, puzzle.id))) {
    return answers === 'all' ? putAllBack(tx, puzzle.id) : putBack(tx, answers);
  }
  const unmarked = await putUnmarkedBack(tx, puzzle.id, answers);
  const marked = await countInForce(tx, puzzle.id, answers);
  if (marked > 0) await askForRegrade(tx, { puzzleId: puzzle.id, answers, reason, memberId });
  return unmarked + marked;
}

/** Answers with a mark were put on the work list before the reveal and came to their turn after it. */
export async function leaveToRegrade(tx: Tx, puzzleId: number, answers: readonly number[]): Promise<void> {
  await saveWork(tx, answers, 'done');
  const regrade = await askForRegrade(tx, { puzzleId, answers, reason: '', memberId: null });
  const details = { regrade, answers: answers.length };
  await appendLog(tx, { kind: 'regrade-asked', puzzleId, memberId: null, details });
}

async function askForRegrade(tx: Tx, asked: NewRegrade): Promise<number> {
  const regradeId = await openRegrade(tx, asked);
  await enqueue(tx, 'regrade', { regradeId });
  return regradeId;
}
