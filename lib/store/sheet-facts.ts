// What the read-out sheet is written from: only answers that count, only marks in force.

import type { ReadLine } from '#lib/reading/reading.ts';
import type { Tx } from './client.ts';

/** A solver who may be named. */
export interface SolverOnSheet {
  readonly solverId: number;
  readonly name: string;
  readonly flags: readonly string[];
  /** Revision of the terms that the mark rests on (rule A6). */
  readonly revision: number;
  readonly reading: ReadLine | null;
}

/** Outcome and points of one solver at one puzzle. */
export interface PastMark {
  readonly puzzleId: number;
  readonly solverId: number;
  readonly outcome: string;
  readonly points: number;
}

/** How many answered, marked on these revisions of the terms, and how many of them solved it. */
export async function countPeople(
  tx: Tx,
  puzzleId: number,
  revisions: readonly number[],
): Promise<{ people: number; solved: number }> {
  const rows = await tx.$queryRaw<{ people: number; solved: number }[]>`
    select count(*)::int as people, (count(*) filter (where m.outcome = 'solved'))::int as solved
    from mark m join answer a on a.id = m.answer_id
    where m.puzzle_id = ${puzzleId} and m.is_current and a.standing = 'counted'
      and m.revision = any(${[...revisions]})`;
  return rows[0] ?? { people: 0, solved: 0 };
}

/** Solvers with a name that may be read out, in the order of their answers. */
export async function listSolversOnSheet(tx: Tx, puzzleId: number, most: number): Promise<SolverOnSheet[]> {
  return tx.$queryRaw<SolverOnSheet[]>`
    select coalesce(s.joined_into_id, s.id) as "solverId", s.name, m.flags, m.revision, m.reading
    from mark m join answer a on a.id = m.answer_id join solver s on s.id = m.solver_id
    where m.puzzle_id = ${puzzleId} and m.is_current and a.standing = 'counted' and m.outcome = 'solved'
      and s.name is not null and s.name_hidden_at is null
    order by a.id limit ${most}`;
}

/** Puzzles of the show up to this one, in the order of their closes, and which of them are void. */
export async function listPuzzlesUpTo(
  tx: Tx,
  showId: number,
  puzzleId: number,
): Promise<{ id: number; isVoid: boolean }[]> {
  return tx.$queryRaw<{ id: number; isVoid: boolean }[]>`
    select p.id, p.voided_at is not null as "isVoid"
    from puzzle p join puzzle this on this.id = ${puzzleId}
    where p.show_id = ${showId} and p.published_at is not null and (p.closes_at, p.id) <= (this.closes_at, this.id)
    order by p.closes_at, p.id`;
}

/** What these solvers did at these puzzles. */
export async function listPastMarks(
  tx: Tx,
  puzzleIds: readonly number[],
  solverIds: readonly number[],
): Promise<PastMark[]> {
  return tx.$queryRaw<PastMark[]>`
    select m.puzzle_id as "puzzleId", coalesce(s.joined_into_id, s.id) as "solverId", m.outcome, m.points
    from mark m join answer a on a.id = m.answer_id join solver s on s.id = m.solver_id
    where m.puzzle_id = any(${[...puzzleIds]}) and m.is_current and a.standing = 'counted'
      and coalesce(s.joined_into_id, s.id) = any(${[...solverIds]})`;
}

/** Solvers read out on the last sheets of other puzzles of the show, the last sheet first. */
export async function listLastSheets(
  tx: Tx,
  showId: number,
  puzzleId: number,
  most: number,
): Promise<number[][]> {
  const rows = await tx.$queryRaw<{ solvers: number[] | null }[]>`
    select array(select jsonb_array_elements_text(l.details::jsonb -> 'solvers'))::int[] as solvers
    from log l join puzzle p on p.id = l.puzzle_id
    where l.kind = 'sheet-read' and p.show_id = ${showId} and l.puzzle_id <> ${puzzleId}
      and l.id = (select max(n.id) from log n where n.kind = 'sheet-read' and n.puzzle_id = l.puzzle_id)
    order by l.id desc limit ${most}`;
  return rows.map((row) => row.solvers ?? []);
}

/** Whether the names of this puzzle's sheet have been noted as read. */
export async function isSheetRead(tx: Tx, puzzleId: number): Promise<boolean> {
  return (await tx.log.count({ where: { kind: 'sheet-read', puzzleId } })) > 0;
}
