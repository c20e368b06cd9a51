// Something that marks rest on has changed: the answers concerned are marked again.

import type { Tx } from '#lib/store/client.ts';
import type { PuzzleRecord } from '#lib/store/puzzles.ts';
import { putAllBack, putBack } from '#lib/store/work-list.ts';

/** Which answers, and on whose word. */
export interface GradingAgain {
  readonly answers: readonly number[] | 'all';
  /** Why, in the host's words. */
  readonly reason: string;
  readonly memberId: number | null;
}

/** Puts the answers back on the work list within the caller's transaction; gives how many that were. */
export function gradeAgain(
  tx: Tx,
  puzzle: Pick<PuzzleRecord, 'id'>,
  { answers }: GradingAgain,
): Promise<number> {
  return answers === 'all' ? putAllBack(tx, puzzle.id) : putBack(tx, answers);
}
