// What the viewers of a puzzle played and who of them solved it: only answers that count, only marks in force.

import type { Tx } from './client.ts';

/** How often a first move was played; null for answers in which no move stands. */
export interface FirstMoveCount {
  readonly move: string | null;
  readonly count: number;
}

/**
 * First moves of the answers that count, most frequent first, then in UCI order: of those marked on these
 * revisions of an amended puzzle, which share a position (rule A6).
 */
export async function countFirstMoves(
  tx: Tx,
  puzzleId: number,
  revisions: readonly number[],
): Promise<FirstMoveCount[]> {
  return tx.$queryRaw<FirstMoveCount[]>`
    select m.line[1] as move, count(*)::int as count
    from mark m join answer a on a.id = m.answer_id
    where m.puzzle_id = ${puzzleId} and m.is_current and a.standing = 'counted'
      and m.revision = any(${[...revisions]})
    group by 1 order by 2 desc, 1`;
}

/** Names of those who solved it, in the order of the alphabet, and how many gave none. */
export async function loadRoll(
  tx: Tx,
  puzzleId: number,
  most: number,
): Promise<{ names: string[]; namedCount: number; namelessCount: number }> {
  const rows = await tx.$queryRaw<{ name: string; of: number }[]>`
    select s.name, count(*) over ()::int as of
    from mark m join answer a on a.id = m.answer_id join solver s on s.id = m.solver_id
    where m.puzzle_id = ${puzzleId} and m.is_current and a.standing = 'counted' and m.outcome = 'solved'
      and s.name is not null and s.name_hidden_at is null
    order by lower(s.name), s.id limit ${most}`;
  const nameless = await tx.$queryRaw<{ count: number }[]>`
    select count(*)::int as count
    from mark m join answer a on a.id = m.answer_id join solver s on s.id = m.solver_id
    where m.puzzle_id = ${puzzleId} and m.is_current and a.standing = 'counted' and m.outcome = 'solved'
      and (s.name is null or s.name_hidden_at is not null)`;
  return {
    names: rows.map((row) => row.name),
    namedCount: rows[0]?.of ?? 0,
    namelessCount: nameless[0]?.count ?? 0,
  };
}
