// Other ways than the published one that answers took, and since when the book has known them (rule A5).

import type { BookKey } from '#lib/book/book-row.ts';
import type { BookVersion } from './books.ts';
import type { Tx } from './client.ts';

/** Marks in force that took the same line, flagged as another way. */
export interface OtherWayMarks {
  readonly line: readonly string[];
  readonly p: number;
  readonly people: number;
  /** Up to three names, earliest answers first. */
  readonly names: readonly string[];
}

/** Lines flagged as another way on the terms in force, those of most people first. */
export async function listOtherWays(
  tx: Tx,
  puzzle: { readonly id: number; readonly revision: number },
  most: number,
): Promise<OtherWayMarks[]> {
  return tx.$queryRaw<OtherWayMarks[]>`
    select m.line, m.p, count(distinct m.solver_id)::int as people,
      coalesce((array_agg(s.name order by a.id) filter (where s.name is not null))[1:3], '{}') as names
    from mark m join answer a on a.id = m.answer_id join solver s on s.id = m.solver_id
    where m.puzzle_id = ${puzzle.id} and m.revision = ${puzzle.revision} and m.is_current
      and a.withdrawn_at is null and 'other-way' = any(m.flags)
    group by m.line, m.p order by people desc, min(a.id) limit ${most}`;
}

/** When the book got its verdict on a move, and when a ruling on it was made; null where there is none. */
export async function loadKnownSince(
  tx: Tx,
  puzzleId: number,
  { version, key }: { readonly version: BookVersion; readonly key: BookKey },
): Promise<{ readonly row: Date | null; readonly ruling: Date | null }> {
  const { position, movesLeft, move } = key;
  const place = { puzzleId, position, movesLeft, move };
  const row = await tx.bookRow.findFirst({ where: { ...place, ...version }, select: { createdAt: true } });
  const ruling = await tx.ruling.findFirst({
    where: { ...place, kind: 'verdict', supersededAt: null },
    select: { createdAt: true },
  });
  return { row: row?.createdAt ?? null, ruling: ruling?.createdAt ?? null };
}

/** When all answers of a puzzle were last marked again on a host's word; null where they never were. */
export async function loadLastMarkedAgain(tx: Tx, puzzleId: number): Promise<Date | null> {
  const rows = await tx.$queryRaw<{ at: Date | null }[]>`
    select max(at) as at from (
      select r.created_at as at from regrade r
      where r.puzzle_id = ${puzzleId} and r.state = 'applied' and r.scope ->> 'answers' = 'all'
      union all
      select l.at from log l
      where l.puzzle_id = ${puzzleId} and l.kind = 'regrade-asked' and l.details::jsonb ->> 'regrade' is null
    ) as moments`;
  return rows[0]?.at ?? null;
}
