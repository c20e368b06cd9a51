// Which of a solver's answers counts: the facts for the decision, and its result. Times are compared
// by the database to the microsecond, never here.

import type { Outcome } from '#lib/marking/mark.ts';
import { STANDINGS, type Standing } from './answers.ts';
import type { Tx } from './client.ts';
import { OUTCOMES } from './marks.ts';
import { oneOf } from './one-of.ts';

export const TIMELINESS = ['in-time', 'late', 'early', 'uncertain'] as const;
/** How an answer's time lies to opening and close (rule P2). */
export type Timely = (typeof TIMELINESS)[number];

/** An answer as a candidate to count. */
export interface Candidate {
  readonly id: number;
  readonly solverId: number;
  readonly timely: Timely;
  /** A reply to somebody, by its source or by its words (rule P4). */
  readonly isReply: boolean;
  /** Number of the import that first showed it after the reveal; null where it was there before. */
  readonly seenLateIn: number | null;
  /** Null while unmarked. */
  readonly outcome: Outcome | null;
  readonly standing: Standing;
}

interface Row {
  id: number;
  solver_id: number;
  timely: string;
  is_reply: boolean;
  seen_late_in: number | null;
  outcome: string | null;
  standing: string;
}

/** All answers of the solvers to the puzzle that were not withdrawn, by solver in order of their times. */
export async function listCandidates(
  tx: Tx,
  puzzleId: number,
  solverIds: readonly number[],
): Promise<Candidate[]> {
  const rows = await tx.$queryRaw<Row[]>`
    select answer.id, answer.solver_id, answer.standing, mark.outcome,
      (answer.is_reply or coalesce(answer.is_addressed, false)) as is_reply,
      case when upload.created_at >= puzzle.revealed_at then upload.id end as seen_late_in,
      case
        when answer.channel <> 'comment' then case
          when answer.received_at >= puzzle.closes_at then 'late'
          when answer.received_at < puzzle.opens_at then 'early' else 'in-time' end
        when answer.stated_from is not null then case
          when answer.stated_from >= puzzle.closes_at then 'late'
          when answer.stated_to < puzzle.opens_at then 'early'
          when answer.stated_to >= puzzle.closes_at then 'uncertain' else 'in-time' end
        when answer.time_word = 'before' then 'in-time'
        when answer.time_word = 'after' then 'late'
        else 'uncertain' end as timely
    from answer join puzzle on puzzle.id = answer.puzzle_id
      left join comment on comment.answer_id = answer.id
      left join import upload on upload.id = comment.import_id
      left join mark on mark.answer_id = answer.id and mark.is_current
    where answer.puzzle_id = ${puzzleId} and answer.solver_id = any(${[...solverIds]})
      and answer.withdrawn_at is null
    order by answer.solver_id, coalesce(answer.stated_from, answer.received_at), answer.id`;
  return rows.map((row) => ({
    id: row.id,
    solverId: row.solver_id,
    timely: oneOf(TIMELINESS, row.timely),
    isReply: row.is_reply,
    seenLateIn: row.seen_late_in,
    outcome: row.outcome === null ? null : oneOf(OUTCOMES, row.outcome),
    standing: oneOf(STANDINGS, row.standing),
  }));
}

/** How the times of answers lie to opening and close. */
export async function loadTimeliness(
  tx: Tx,
  puzzleId: number,
  solverIds: readonly number[],
): Promise<Map<number, Timely>> {
  const candidates = await listCandidates(tx, puzzleId, solverIds);
  return new Map(candidates.map((one) => [one.id, one.timely]));
}

/** Saves the changed standings. What stops counting is saved first: one answer counts at any moment. */
export async function saveStandings(
  tx: Tx,
  changes: readonly { readonly id: number; readonly standing: Standing }[],
): Promise<void> {
  const stopping = changes.filter((one) => one.standing !== 'counted');
  const counting = changes.filter((one) => one.standing === 'counted');
  for (const part of [stopping, counting]) {
    if (part.length === 0) continue;
    await tx.$executeRaw`
      update answer set standing = change.standing
      from unnest(${part.map((one) => one.id)}::int[], ${part.map((one) => one.standing)}::text[]) as change(id, standing)
      where answer.id = change.id`;
  }
}
