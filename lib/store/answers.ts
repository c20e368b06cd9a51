// Answers as received: appended, found again, withdrawn.

import type { Tx } from './client.ts';
import { oneOf } from './one-of.ts';

export const CHANNELS = ['page', 'board', 'api', 'comment'] as const;
export type Channel = (typeof CHANNELS)[number];

export const STANDINGS = [
  'waiting',
  'counted',
  'replaced',
  'late',
  'early',
  'no-answer',
  'reply',
  'after-reveal',
  'own-voice',
  'withdrawn',
] as const;
/** Why an answer counts or does not (rules P2, P4). */
export type Standing = (typeof STANDINGS)[number];

/** What is appended of an answer; the time of receipt is the database's. */
export interface NewAnswer {
  readonly puzzleId: number;
  readonly solverId: number;
  readonly text: string;
  readonly name: string | null;
  readonly meant: readonly string[] | null;
  readonly channel: Channel;
  readonly clientKey: string | null;
  readonly receiptHash: string | null;
  readonly locale: string | null;
  readonly statedFrom?: Date | null;
  readonly statedTo?: Date | null;
  readonly timeWord?: 'before' | 'after' | 'unknown' | null;
  readonly isReply?: boolean;
  readonly intakeFlags?: readonly string[];
  /** Revision of the terms that the sender's page showed (rule A6); null where not told. */
  readonly seenRevision?: number | null;
}

/**
 * Appends an answer. Time and lateness are the database's, computed in the insert itself: late means
 * at or after the close.
 */
export async function appendAnswer(
  tx: Tx,
  answer: NewAnswer,
): Promise<{ id: number; receivedAt: Date; isLate: boolean }> {
  const rows = await tx.$queryRaw<{ id: number; received_at: Date; late: boolean }[]>`
    insert into answer (puzzle_id, solver_id, text, name, has_meant, meant, channel, client_key, receipt_hash,
      locale, stated_from, stated_to, time_word, is_reply, intake_flags, seen_revision)
    values (${answer.puzzleId}, ${answer.solverId}, ${answer.text}, ${answer.name}, ${answer.meant !== null},
      ${[...(answer.meant ?? [])]}, ${answer.channel}, ${answer.clientKey}, ${answer.receiptHash}, ${answer.locale},
      ${answer.statedFrom ?? null}, ${answer.statedTo ?? null}, ${answer.timeWord ?? null},
      ${answer.isReply ?? false}, ${[...(answer.intakeFlags ?? [])]}, ${answer.seenRevision ?? null}::int)
    returning id, received_at,
      received_at >= coalesce((select closes_at from puzzle where id = puzzle_id), 'infinity') as late`;
  const row = rows[0];
  if (row === undefined) throw new Error('The database kept no answer.');
  return { id: row.id, receivedAt: row.received_at, isLate: row.late };
}

/** An answer as stored. */
export interface AnswerRecord {
  readonly id: number;
  readonly puzzleId: number;
  readonly solverId: number;
  readonly text: string;
  readonly name: string | null;
  readonly meant: readonly string[] | null;
  readonly channel: Channel;
  readonly receivedAt: Date;
  readonly statedFrom: Date | null;
  readonly statedTo: Date | null;
  readonly timeWord: 'before' | 'after' | 'unknown' | null;
  readonly isReply: boolean;
  readonly intakeFlags: readonly string[];
  readonly withdrawnAt: Date | null;
  readonly work: 'to-mark' | 'lacking' | 'done' | 'parked';
  readonly standing: Standing;
  readonly receiptHash: string | null;
  readonly asked: number;
  readonly tries: number;
  readonly seenRevision: number | null;
}

interface StoredAnswer {
  id: number;
  puzzleId: number;
  solverId: number;
  text: string;
  name: string | null;
  hasMeant: boolean;
  meant: string[];
  channel: string;
  receivedAt: Date;
  statedFrom: Date | null;
  statedTo: Date | null;
  timeWord: string | null;
  isReply: boolean;
  intakeFlags: string[];
  withdrawnAt: Date | null;
  work: string;
  standing: string;
  receiptHash: string | null;
  asked: number;
  tries: number;
  seenRevision: number | null;
}

/** The stored row in the program's own types. */
export function toAnswer(row: StoredAnswer): AnswerRecord {
  return {
    id: row.id,
    puzzleId: row.puzzleId,
    solverId: row.solverId,
    text: row.text,
    name: row.name,
    meant: row.hasMeant ? row.meant : null,
    channel: oneOf(CHANNELS, row.channel),
    receivedAt: row.receivedAt,
    statedFrom: row.statedFrom,
    statedTo: row.statedTo,
    timeWord: row.timeWord === null ? null : oneOf(['before', 'after', 'unknown'], row.timeWord),
    isReply: row.isReply,
    intakeFlags: row.intakeFlags,
    withdrawnAt: row.withdrawnAt,
    work: oneOf(['to-mark', 'lacking', 'done', 'parked'], row.work),
    standing: oneOf(STANDINGS, row.standing),
    receiptHash: row.receiptHash,
    asked: row.asked,
    tries: row.tries,
    seenRevision: row.seenRevision,
  };
}

/** The answer that was sent with this key; null where none was. */
export async function findByClientKey(tx: Tx, clientKey: string): Promise<AnswerRecord | null> {
  const row = await tx.answer.findUnique({ where: { clientKey } });
  return row === null ? null : toAnswer(row);
}

/** An answer by its number; null where there is none. */
export async function findAnswer(tx: Tx, id: number): Promise<AnswerRecord | null> {
  const row = await tx.answer.findUnique({ where: { id } });
  return row === null ? null : toAnswer(row);
}

/** The newest answer of a receipt; null where the receipt is unknown. */
export async function findByReceipt(tx: Tx, receiptHash: string): Promise<AnswerRecord | null> {
  const row = await tx.answer.findFirst({ where: { receiptHash }, orderBy: { id: 'desc' } });
  return row === null ? null : toAnswer(row);
}

/** All answers of a solver to a puzzle, oldest first. */
export async function listAnswersOf(tx: Tx, puzzleId: number, solverId: number): Promise<AnswerRecord[]> {
  const rows = await tx.answer.findMany({ where: { puzzleId, solverId }, orderBy: { id: 'asc' } });
  return rows.map(toAnswer);
}

/**
 * Withdraws all answers of a solver to a puzzle: text, name and meant line are erased, number and
 * times stay. Gives the numbers of the answers.
 */
export async function eraseAnswers(tx: Tx, puzzleId: number, solverId: number): Promise<number[]> {
  const rows = await tx.$queryRaw<{ id: number }[]>`
    update answer set text = '', name = null, has_meant = false, meant = '{}', withdrawn_at = clock_timestamp(),
      standing = 'withdrawn', work = 'done'
    where puzzle_id = ${puzzleId} and solver_id = ${solverId} and withdrawn_at is null returning id`;
  const ids = rows.map((row) => row.id);
  if (ids.length === 0) return ids;
  await tx.want.deleteMany({ where: { answerId: { in: ids } } });
  await tx.$executeRaw`update comment set text = '', author = '' where answer_id = any(${ids})`;
  return ids.sort((a, b) => a - b);
}

/** Live numbers for the host: nobody is judged by them. */
export async function countAnswers(
  tx: Tx,
  puzzleId: number,
): Promise<{ answers: number; solvers: number; waiting: number }> {
  const rows = await tx.$queryRaw<{ answers: number; solvers: number; waiting: number }[]>`
    select count(*)::int as answers, count(distinct solver_id)::int as solvers,
      (count(*) filter (where work in ('to-mark', 'lacking')))::int as waiting
    from answer where puzzle_id = ${puzzleId} and withdrawn_at is null`;
  return rows[0] ?? { answers: 0, solvers: 0, waiting: 0 };
}
