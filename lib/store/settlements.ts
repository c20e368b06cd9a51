// Taking a host's settlement of doubtful answers back: what was said under one reason, by one member.

import type { Tx } from './client.ts';

/** What a settlement consisted of. */
export interface TakenBack {
  readonly rulings: readonly number[];
  readonly answers: readonly number[];
  /** The overrule of each of these answers, which is in force no more; by answer. */
  readonly marks: ReadonlyMap<number, number>;
}

/**
 * Ends rulings and overrules that carry this reason and are in force. The marks stay as they were
 * written; their answers are without a mark in force until they are marked again.
 */
export async function takeBackSettlement(
  tx: Tx,
  said: { readonly puzzleId: number; readonly memberId: number; readonly why: string },
): Promise<TakenBack> {
  const { puzzleId, memberId, why } = said;
  const rulings = await tx.$queryRaw<{ id: number }[]>`
    update ruling set superseded_at = clock_timestamp()
    where puzzle_id = ${puzzleId} and member_id = ${memberId} and reason = ${why} and superseded_at is null
    returning id`;
  const marks = await tx.$queryRaw<{ id: number; answer_id: number }[]>`
    update mark set is_current = false
    where puzzle_id = ${puzzleId} and member_id = ${memberId} and why = ${why} and made_by = 'person' and is_current
    returning id, answer_id`;
  return {
    rulings: rulings.map((row) => row.id),
    answers: marks.map((row) => row.answer_id),
    marks: new Map(marks.map((row) => [row.answer_id, row.id])),
  };
}
