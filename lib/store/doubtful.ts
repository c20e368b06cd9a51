// The list of doubtful answers: those whose mark in force needs a person, by group, largest first.

import type { Tx } from './client.ts';

/** A group that is settled as one. */
export interface DoubtfulGroup {
  /** Key of the group, as marking wrote it. */
  readonly doubt: string;
  readonly answers: number;
  /** Up to five answers to look at, oldest first. */
  readonly examples: readonly number[];
}

/** Groups of a puzzle, the largest first, then the oldest. */
export async function listDoubtfulGroups(tx: Tx, puzzleId: number): Promise<DoubtfulGroup[]> {
  return tx.$queryRaw<DoubtfulGroup[]>`
    select mark.doubt, count(*)::int as answers, (array_agg(mark.answer_id order by mark.answer_id))[1:5] as examples
    from mark join answer on answer.id = mark.answer_id
    where mark.puzzle_id = ${puzzleId} and mark.is_current and mark.doubt is not null and answer.withdrawn_at is null
    group by mark.doubt order by answers desc, min(mark.answer_id)`;
}

/** The answers of a group, oldest first. */
export async function listDoubtful(tx: Tx, puzzleId: number, doubt: string): Promise<number[]> {
  const rows = await tx.$queryRaw<{ answer_id: number }[]>`
    select mark.answer_id from mark join answer on answer.id = mark.answer_id
    where mark.puzzle_id = ${puzzleId} and mark.is_current and mark.doubt = ${doubt} and answer.withdrawn_at is null
    order by mark.answer_id`;
  return rows.map((row) => row.answer_id);
}
