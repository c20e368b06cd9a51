// The log as the desk reads it, newest first.

import type { Tx } from './client.ts';

/** One entry; the sign-in name is that of today, the entry itself holds the member's number. */
export interface LogLine {
  readonly id: number;
  readonly at: Date;
  readonly kind: string;
  readonly who: string | null;
  readonly puzzleId: number | null;
  readonly answerId: number | null;
  readonly details: string;
}

/** Entries below a number that concern the show, its members or nobody in particular. */
export async function listLogLines(
  tx: Tx,
  asked: { readonly showId: number; readonly below: number | null; readonly most: number },
): Promise<LogLine[]> {
  const { showId, below, most } = asked;
  return tx.$queryRaw<LogLine[]>`
    select l.id, l.at, l.kind, m.sign_in_name as who, l.puzzle_id as "puzzleId", l.answer_id as "answerId",
      l.details::text as details
    from log l left join member m on m.id = l.member_id left join puzzle p on p.id = l.puzzle_id
    where (p.show_id = ${showId} or (l.puzzle_id is null and (m.show_id = ${showId} or l.member_id is null)))
      and (${below}::int is null or l.id < ${below}::int)
    order by l.id desc limit ${most}`;
}
