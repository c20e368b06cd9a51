// A puzzle as its own show's desk may see it: what every page and deed about one begins with.

import { type PuzzleState, stateAt } from '#lib/puzzle/puzzle-state.ts';
import { db } from '#lib/store/client.ts';
import { listDoubtfulGroups } from '#lib/store/doubtful.ts';
import { loadPuzzle, type PuzzleRecord } from '#lib/store/puzzles.ts';
import { listWaitingLooks } from '#lib/store/second-looks.ts';

/** A puzzle of the host's show. */
export interface DeskPuzzle {
  readonly record: PuzzleRecord;
  readonly state: PuzzleState;
  /** Questions that wait for a person: groups of doubtful answers, and second looks. */
  readonly doubtful: number;
  /** The second looks among them. */
  readonly looks: number;
}

/** The puzzle of that number; null where there is none or it belongs to another show (trust test A8). */
export async function openDeskPuzzle(showId: number, puzzleId: number): Promise<DeskPuzzle | null> {
  if (!Number.isSafeInteger(puzzleId) || puzzleId < 1 || puzzleId > 2_147_483_647) return null;
  const record = await loadPuzzle(db(), { id: puzzleId });
  if (record === null || record.showId !== showId) return null;
  const groups = await listDoubtfulGroups(db(), puzzleId);
  const looks = (await listWaitingLooks(db(), puzzleId)).length;
  return { record, state: stateAt(record, record.now), doubtful: groups.length + looks, looks };
}
