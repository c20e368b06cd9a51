// Sums of points, counted at reading from the marks in force of answers that count (rule S1).

import type { Tx } from './client.ts';

/** A line of the standings: the solver's sum, the rank shared by all with the same sum. */
export interface StandingRow {
  readonly rank: number;
  readonly solverId: number;
  /** Null where none was given, or where it was withdrawn. */
  readonly name: string | null;
  readonly points: number;
  readonly solved: number;
  readonly isShared: boolean;
}

/** Where a page goes on: the last line of the page before. */
export interface StandingPlace {
  readonly points: number;
  readonly solved: number;
  readonly solverId: number;
}

/** Which puzzles count together. */
export type StandingScope = { readonly episodeId: number } | { readonly seasonId: number };

/**
 * A page of the standings, best first; only puzzles that are revealed and not void. Pages go on by key,
 * not by number, so that a late page costs no more than the first.
 */
export async function loadStandings(
  tx: Tx,
  scope: StandingScope,
  page: { readonly after: StandingPlace | null; readonly size: number },
): Promise<{ rows: StandingRow[]; solvers: number }> {
  const episode = 'episodeId' in scope ? scope.episodeId : null;
  const season = 'seasonId' in scope ? scope.seasonId : null;
  const points = page.after?.points ?? null;
  const solved = page.after?.solved ?? null;
  const solver = page.after?.solverId ?? null;
  const rows = await tx.$queryRaw<Row[]>`
    with sums as (
      select coalesce(s.joined_into_id, s.id) as solver_id, sum(m.points)::int as points,
        (count(*) filter (where m.outcome = 'solved'))::int as solved
      from mark m
      join answer a on a.id = m.answer_id and a.standing = 'counted'
      join puzzle p on p.id = m.puzzle_id and p.revealed_at is not null and p.voided_at is null
      join episode e on e.id = p.episode_id
      join solver s on s.id = m.solver_id
      where m.is_current and (e.id = ${episode}::int or e.season_id = ${season}::int)
      group by 1
    ), ranked as (
      select *, rank() over (order by points desc, solved desc)::int as rank,
        count(*) over (partition by points, solved)::int as sharers, count(*) over ()::int as solvers
      from sums
    )
    select r.rank, r.solver_id as "solverId", case when s.name_hidden_at is null then s.name end as name,
      r.points, r.solved, r.sharers, r.solvers
    from ranked r join solver s on s.id = r.solver_id
    where ${solver}::int is null
      or (-r.points, -r.solved, r.solver_id) > (-${points}::int, -${solved}::int, ${solver}::int)
    order by r.points desc, r.solved desc, r.solver_id
    limit ${page.size}`;
  return {
    rows: rows.map(({ rank, solverId, name, points, solved, sharers }) => ({
      rank,
      solverId,
      name,
      points,
      solved,
      isShared: sharers > 1,
    })),
    solvers: rows[0]?.solvers ?? 0,
  };
}

interface Row extends Omit<StandingRow, 'isShared'> {
  readonly sharers: number;
  readonly solvers: number;
}

/** Seasons that have a revealed puzzle, newest first, with those of their episodes that have one. */
export async function listStandingScopes(tx: Tx): Promise<
  {
    readonly seasonId: number;
    readonly seasonName: string;
    readonly episodeId: number;
    readonly episodeNumber: number;
    readonly episodeTitle: string;
    readonly showName: string;
  }[]
> {
  const rows = await tx.episode.findMany({
    where: { puzzles: { some: { revealedAt: { not: null }, voidedAt: null } } },
    include: { season: true, show: { select: { name: true } } },
    orderBy: [{ season: { number: 'desc' } }, { number: 'desc' }],
  });
  return rows.map((row) => ({
    seasonId: row.seasonId,
    seasonName: row.season.name,
    episodeId: row.id,
    episodeNumber: row.number,
    episodeTitle: row.title,
    showName: row.show.name,
  }));
}
