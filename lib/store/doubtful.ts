// The list of doubtful answers: marks in force that ask for a person, by group.

import type { Tx } from './client.ts';

/** One group: marks with the same doubt, largest group first. */
export interface DoubtfulGroup {
  /** Key of the group, as marking wrote it. */
  readonly doubt: string;
  readonly people: number;
  /** The earliest answer of the group. */
  readonly firstAnswerId: number;
}

/** Groups of a puzzle, the largest first, then the oldest. */
export async function listDoubtfulGroups(tx: Tx, puzzleId: number): Promise<DoubtfulGroup[]> {
  const rows = await tx.$queryRaw<{ doubt: string; people: number; first: number }[]>`
    select mark.doubt, count(distinct mark.solver_id)::int as people, min(mark.answer_id)::int as first
    from mark join answer on answer.id = mark.answer_id
    where mark.puzzle_id = ${puzzleId} and mark.is_current and mark.doubt is not null and answer.withdrawn_at is null
    group by mark.doubt order by people desc, first asc`;
  return rows.map((row) => ({ doubt: row.doubt, people: row.people, firstAnswerId: row.first }));
}

/** How many groups wait. */
export async function countDoubtfulGroups(tx: Tx, puzzleId: number): Promise<number> {
  const rows = await tx.$queryRaw<{ groups: number }[]>`
    select count(distinct mark.doubt)::int as groups
    from mark join answer on answer.id = mark.answer_id
    where mark.puzzle_id = ${puzzleId} and mark.is_current and mark.doubt is not null and answer.withdrawn_at is null`;
  return rows[0]?.groups ?? 0;
}

/** Answers of one group, oldest first, at most so many. */
export async function listAnswersInDoubt(
  tx: Tx,
  which: { readonly puzzleId: number; readonly doubt: string; readonly most: number },
): Promise<number[]> {
  const { puzzleId, doubt, most } = which;
  const rows = await tx.$queryRaw<{ id: number }[]>`
    select mark.answer_id as id from mark join answer on answer.id = mark.answer_id
    where mark.puzzle_id = ${puzzleId} and mark.is_current and mark.doubt = ${doubt} and answer.withdrawn_at is null
    order by mark.answer_id limit ${most}`;
  return rows.map((row) => row.id);
}
