// Whom a sheet wronged: solvers whose mark at a puzzle is better now than when its sheet was read out, and who
// were named on no sheet since (rule S3).

import type { Tx } from './client.ts';

/** A solver to be put right on the next sheet; the name is null where there is none to say. */
export interface Wronged {
  readonly solverId: number;
  readonly name: string | null;
}

/**
 * Solvers whom the sheets of these puzzles wronged. Compared is the counted mark in force with the one in force
 * when the sheet was first read out; that sheet is looked for among the last `sheets` that were read.
 */
export async function listWronged(tx: Tx, puzzleIds: readonly number[], sheets: number): Promise<Wronged[]> {
  return tx.$queryRaw<Wronged[]>`
    with sheet as (
      select puzzle_id, min(at) as at from log
      where kind = 'sheet-read' and puzzle_id = any(${[...puzzleIds]}) group by puzzle_id
      order by max(id) desc limit ${sheets}
    ), risen as (
      select distinct coalesce(s.joined_into_id, s.id) as solver_id, m.created_at as since
      from sheet
      join mark m on m.puzzle_id = sheet.puzzle_id and m.is_current and m.created_at > sheet.at
      join puzzle p on p.id = m.puzzle_id and p.voided_at is null
      join answer a on a.id = m.answer_id and a.standing = 'counted'
      join solver s on s.id = m.solver_id
      join lateral (
        -- A mark of the program beside a person's word was never in force.
        select f.outcome, f.points from mark f
        where f.answer_id = m.answer_id and f.created_at <= sheet.at
          and (f.superseded_by_id is not null or f.made_by = 'person' or not exists (
            select from mark word where word.answer_id = f.answer_id and word.made_by = 'person' and word.id < f.id))
        order by f.id desc limit 1) former on true
      where m.points > former.points or (m.outcome = 'solved' and former.outcome <> 'solved')
    )
    select risen.solver_id as "solverId", case when s.name_hidden_at is null then s.name end as name
    from risen join solver s on s.id = risen.solver_id
    where not exists (
      select from log n where n.kind = 'sheet-read' and n.at > risen.since
        and n.details::jsonb -> 'solvers' @> to_jsonb(risen.solver_id))
    group by 1, 2 order by 1`;
}
