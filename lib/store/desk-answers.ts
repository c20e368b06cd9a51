// Answers as the desk lists them: with the mark in force, a page at a time.

import { CHANNELS, type Channel, STANDINGS, type Standing } from './answers.ts';
import type { Tx } from './client.ts';
import { OUTCOMES } from './marks.ts';
import { oneOf } from './one-of.ts';

/** One answer in the list. */
export interface AnswerLine {
  readonly id: number;
  readonly name: string | null;
  readonly text: string;
  readonly channel: Channel;
  readonly at: Date;
  readonly standing: Standing;
  /** Null while unmarked. */
  readonly outcome: (typeof OUTCOMES)[number] | null;
  readonly atMove: number | null;
  readonly points: number | null;
  /** Unfinished because a move on the way mates later and the text stops before. */
  readonly isSlowerNotShown: boolean;
  readonly isOverruled: boolean;
}

interface Row {
  id: number;
  name: string | null;
  text: string;
  channel: string;
  at: Date;
  standing: string;
  outcome: string | null;
  at_move: number | null;
  points: number | null;
  reason_code: string | null;
  made_by: string | null;
}

/** Answers newest first, below a number; withdrawn ones are left out. `outcome` null asks for all. */
export async function listAnswerLines(
  tx: Tx,
  asked: {
    readonly puzzleId: number;
    readonly below: number | null;
    readonly outcome: string | null;
    readonly most: number;
  },
): Promise<AnswerLine[]> {
  const { puzzleId, below, outcome, most } = asked;
  const rows = await tx.$queryRaw<Row[]>`
    select a.id, a.name, left(a.text, 400) as text, a.channel, coalesce(a.stated_from, a.received_at) as at,
      a.standing, m.outcome, m.at_move, m.points, m.reason->>'code' as reason_code, m.made_by
    from answer a left join mark m on m.answer_id = a.id and m.is_current
    where a.puzzle_id = ${puzzleId} and a.withdrawn_at is null
      and (${below}::int is null or a.id < ${below}::int)
      and (${outcome}::text is null or m.outcome = ${outcome}::text)
    order by a.id desc limit ${most}`;
  return rows.map((row) => ({
    id: row.id,
    name: row.name,
    text: row.text,
    channel: oneOf(CHANNELS, row.channel),
    at: row.at,
    standing: oneOf(STANDINGS, row.standing),
    outcome: row.outcome === null ? null : oneOf(OUTCOMES, row.outcome),
    atMove: row.at_move,
    points: row.points,
    isSlowerNotShown: row.reason_code === 'slower-not-shown',
    isOverruled: row.made_by === 'person',
  }));
}

/** How many answers have which outcome; those not marked yet are left out. */
export async function countByOutcome(
  tx: Tx,
  puzzleId: number,
): Promise<{ outcome: (typeof OUTCOMES)[number]; count: number }[]> {
  const rows = await tx.$queryRaw<{ outcome: string; count: number }[]>`
    select m.outcome, count(*)::int as count from mark m join answer a on a.id = m.answer_id
    where m.puzzle_id = ${puzzleId} and m.is_current and a.withdrawn_at is null
    group by m.outcome order by count desc, m.outcome`;
  return rows.map((row) => ({ outcome: oneOf(OUTCOMES, row.outcome), count: row.count }));
}

/** Every mark that an answer ever had, oldest first, with the sign-in name of who overruled. */
export async function listMarksOf(tx: Tx, answerId: number) {
  return tx.mark.findMany({
    where: { answerId },
    select: {
      id: true,
      outcome: true,
      points: true,
      atMove: true,
      reason: true,
      madeBy: true,
      why: true,
      isCurrent: true,
      createdAt: true,
      member: { select: { signInName: true } },
    },
    orderBy: { id: 'asc' },
  });
}
