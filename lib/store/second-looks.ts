// Second looks (rule A2): asked once an answer, settled once by a person. Whoever writes here holds the
// answer's solver, so that a withdrawal never meets a look half asked.

import type { Tx } from './client.ts';
import { oneOf } from './one-of.ts';

/** A second look as stored. */
export interface SecondLookRecord {
  readonly id: number;
  readonly answerId: number;
  readonly puzzleId: number;
  /** The viewer's words; empty where none were given or after a withdrawal. */
  readonly words: string;
  readonly askedAt: Date;
  /** Null while it waits, as the next two. */
  readonly settledAt: Date | null;
  readonly result: 'stands' | 'changed' | null;
  /** The host's words; empty where the fixed sentence is enough. */
  readonly reply: string | null;
  readonly memberId: number | null;
}

/** Notes that a look was asked for; null where the answer has one already. */
export async function appendLook(
  tx: Tx,
  look: { readonly answerId: number; readonly puzzleId: number; readonly words: string },
): Promise<number | null> {
  const rows = await tx.$queryRaw<{ id: number }[]>`
    insert into second_look (answer_id, puzzle_id, words)
    values (${look.answerId}, ${look.puzzleId}, ${look.words})
    on conflict (answer_id) do nothing returning id`;
  return rows[0]?.id ?? null;
}

/** The look of an answer; null where none was asked for. */
export async function loadLook(tx: Tx, answerId: number): Promise<SecondLookRecord | null> {
  const row = await tx.secondLook.findUnique({ where: { answerId } });
  if (row === null) return null;
  return { ...row, result: row.result === null ? null : oneOf(['stands', 'changed'], row.result) };
}

/** The looks of a puzzle that wait, oldest first; those of withdrawn answers are nobody's business any more. */
export async function listWaitingLooks(
  tx: Tx,
  puzzleId: number,
): Promise<{ answerId: number; name: string | null }[]> {
  return tx.$queryRaw<{ answerId: number; name: string | null }[]>`
    select look.answer_id as "answerId", answer.name
    from second_look look join answer on answer.id = look.answer_id
    where look.puzzle_id = ${puzzleId} and look.settled_at is null and answer.withdrawn_at is null
    order by look.id`;
}

/** Settles a look that waits. */
export async function saveLookSettled(
  tx: Tx,
  answerId: number,
  by: { readonly result: 'stands' | 'changed'; readonly reply: string; readonly memberId: number },
): Promise<void> {
  await tx.$executeRaw`
    update second_look set settled_at = clock_timestamp(), result = ${by.result}, reply = ${by.reply},
      member_id = ${by.memberId}
    where answer_id = ${answerId} and settled_at is null`;
}

/** Puts a settled look back on the list. */
export async function saveLookReopened(tx: Tx, answerId: number): Promise<void> {
  await tx.$executeRaw`
    update second_look set settled_at = null, result = null, reply = null, member_id = null
    where answer_id = ${answerId}`;
}

/** Erases what viewer and host wrote about withdrawn answers; that there was a look stays. */
export async function eraseLookWords(tx: Tx, answerIds: readonly number[]): Promise<void> {
  await tx.$executeRaw`
    update second_look set words = '', reply = case when reply is null then null else '' end
    where answer_id = any(${[...answerIds]})`;
}
