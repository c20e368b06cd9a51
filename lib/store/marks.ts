// Marks: appended, superseded, never changed. An overrule stays in force over later marks of the program.

import type { MarkedMove, MarkReason, Outcome } from '#lib/marking/mark.ts';
import type { ReadLine } from '#lib/reading/reading.ts';
import type { Tx } from './client.ts';
import type { Mark as StoredMark } from './generated/client.ts';
import { toJson } from './json.ts';
import { oneOf } from './one-of.ts';

export const OUTCOMES: readonly Outcome[] = [
  'solved',
  'slower',
  'unfinished',
  'slipped',
  'wrong',
  'impossible',
  'ambiguous',
  'unclear',
  'unreadable',
  'chatter',
];

/** What is appended of a mark. */
export interface NewMark {
  readonly answerId: number;
  readonly puzzleId: number;
  readonly solverId: number;
  readonly outcome: Outcome;
  /** Codes of the union Flag. */
  readonly flags: readonly string[];
  readonly points: number;
  readonly p: number;
  readonly r: number;
  readonly atMove: number | null;
  readonly line: readonly string[] | null;
  readonly reading: ReadLine | null;
  readonly verdicts: readonly MarkedMove[];
  readonly reason: MarkReason;
  readonly scheme: string;
  readonly schemeVersion: number;
  readonly readerVersion: number;
  readonly engineVersion: string | null;
  readonly bookVersion: string;
  /** Revision of the puzzle's terms that it rests on (rule A6). */
  readonly revision: number;
  readonly doubt: string | null;
  /** Null for a mark of the program. */
  readonly overrule: { readonly memberId: number; readonly why: string } | null;
  readonly regradeId: number | null;
}

/** A mark as stored. */
export interface MarkRecord extends NewMark {
  readonly id: number;
  readonly isCurrent: boolean;
  readonly createdAt: Date;
}

/** The stored row in the program's own types. */
export function toMark(row: StoredMark): MarkRecord {
  return {
    id: row.id,
    answerId: row.answerId,
    puzzleId: row.puzzleId,
    solverId: row.solverId,
    outcome: oneOf(OUTCOMES, row.outcome),
    flags: row.flags,
    points: row.points,
    p: row.p,
    r: row.r,
    atMove: row.atMove,
    line: row.hasLine ? row.line : null,
    reading: row.reading as unknown as ReadLine | null,
    verdicts: row.verdicts as unknown as MarkedMove[],
    reason: row.reason as unknown as MarkReason,
    scheme: row.scheme,
    schemeVersion: row.schemeVersion,
    readerVersion: row.readerVersion,
    engineVersion: row.engineVersion,
    bookVersion: row.bookVersion,
    revision: row.revision,
    doubt: row.doubt,
    overrule: row.madeBy === 'person' ? { memberId: row.memberId ?? 0, why: row.why ?? '' } : null,
    regradeId: row.regradeId,
    isCurrent: row.isCurrent,
    createdAt: row.createdAt,
  };
}

function columnsOf(mark: NewMark, isCurrent: boolean) {
  return {
    answerId: mark.answerId,
    puzzleId: mark.puzzleId,
    solverId: mark.solverId,
    outcome: mark.outcome,
    flags: [...mark.flags],
    points: mark.points,
    p: mark.p,
    r: mark.r,
    atMove: mark.atMove,
    hasLine: mark.line !== null,
    line: [...(mark.line ?? [])],
    ...(mark.reading === null ? {} : { reading: toJson(mark.reading) }),
    verdicts: toJson(mark.verdicts),
    reason: toJson(mark.reason),
    scheme: mark.scheme,
    schemeVersion: mark.schemeVersion,
    readerVersion: mark.readerVersion,
    engineVersion: mark.engineVersion,
    bookVersion: mark.bookVersion,
    revision: mark.revision,
    doubt: mark.doubt,
    madeBy: mark.overrule === null ? 'program' : 'person',
    memberId: mark.overrule?.memberId ?? null,
    why: mark.overrule?.why ?? null,
    regradeId: mark.regradeId,
    isCurrent,
  };
}

/** One mark that took another's place. */
export interface MarkChange {
  readonly answer: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Appends marks of the program, at most one an answer, and supersedes the former. Where a person has
 * overruled, the overrule stays in force and the new mark is kept beside it.
 */
export async function appendMarks(tx: Tx, marks: readonly NewMark[]): Promise<MarkChange[]> {
  if (marks.length === 0) return [];
  const ids = marks.map((mark) => mark.answerId);
  const overruled = new Set(
    (
      await tx.mark.findMany({
        where: { answerId: { in: ids }, isCurrent: true, madeBy: 'person' },
        select: { answerId: true },
      })
    ).map((row) => row.answerId),
  );
  const former = await tx.$queryRaw<{ id: number; answer_id: number }[]>`
    update mark set is_current = false
    where answer_id = any(${ids}) and is_current and made_by = 'program' returning id, answer_id`;
  const appended = await tx.mark.createManyAndReturn({
    data: marks.map((mark) => columnsOf(mark, !overruled.has(mark.answerId))),
    select: { id: true, answerId: true },
  });
  if (former.length === 0) return [];
  const newIdOf = new Map(appended.map((row) => [row.answerId, row.id]));
  const changes = former.map((row) => ({
    answer: row.answer_id,
    from: row.id,
    to: newIdOf.get(row.answer_id) ?? 0,
  }));
  await tx.$executeRaw`
    update mark set superseded_by_id = pair.next
    from unnest(${changes.map((one) => one.from)}::int[], ${changes.map((one) => one.to)}::int[]) as pair(former, next)
    where mark.id = pair.former`;
  return changes;
}

/** Appends a person's mark; it is in force from now on. Gives its number and that of the former. */
export async function appendOverrule(
  tx: Tx,
  mark: NewMark,
): Promise<{ id: number; formerId: number | null }> {
  const former = await tx.$queryRaw<{ id: number }[]>`
    update mark set is_current = false where answer_id = ${mark.answerId} and is_current returning id`;
  const row = await tx.mark.create({ data: columnsOf(mark, true), select: { id: true } });
  const formerId = former[0]?.id ?? null;
  if (formerId !== null) await tx.mark.update({ where: { id: formerId }, data: { supersededById: row.id } });
  return { id: row.id, formerId };
}

/**
 * Takes the program's `unclear` marks out of force where the answer waits for the book: until it is marked
 * again nobody is shown a doubt that has been settled.
 */
export async function dropUnclearMarks(tx: Tx, puzzleId: number): Promise<void> {
  await tx.$executeRaw`
    update mark set is_current = false from answer
    where answer.id = mark.answer_id and mark.puzzle_id = ${puzzleId} and mark.is_current
      and mark.outcome = 'unclear' and mark.made_by = 'program' and answer.work = 'lacking'`;
}

/** Erases what the marks of withdrawn answers quote of their texts, and what the host wrote about them. */
export async function eraseMarkWords(tx: Tx, answerIds: readonly number[]): Promise<void> {
  await tx.$executeRaw`
    update mark set why = case when why is null then null else '' end, reason = reason #- '{params,text}',
      doubt = null
    where answer_id = any(${[...answerIds]})
      and (why <> '' or reason #> '{params,text}' is not null or doubt is not null)`;
}

/** Takes the marks that only say that marking failed out of force: these answers are marked again. */
export async function dropParkedMarks(tx: Tx, answerIds: readonly number[]): Promise<void> {
  await tx.$executeRaw`
    update mark set is_current = false
    where answer_id = any(${[...answerIds]}) and is_current and made_by = 'program' and doubt like 'parked %'`;
}

/** The mark that this one took the place of; null for the first. */
export async function loadFormerMark(tx: Tx, id: number): Promise<MarkRecord | null> {
  const row = await tx.mark.findFirst({ where: { supersededById: id }, orderBy: { id: 'desc' } });
  return row === null ? null : toMark(row);
}

/** Puts a former mark in force again, as a new row; gives its number. */
export async function restoreMark(tx: Tx, former: NewMark): Promise<number> {
  return (await appendOverrule(tx, former)).id;
}

/** The mark in force of an answer; null while unmarked. */
export async function loadCurrentMark(tx: Tx, answerId: number): Promise<MarkRecord | null> {
  const row = await tx.mark.findFirst({ where: { answerId, isCurrent: true } });
  return row === null ? null : toMark(row);
}

/** The program's newest mark of an answer, in force or beside an overrule. */
export async function loadProgramMark(tx: Tx, answerId: number): Promise<MarkRecord | null> {
  const row = await tx.mark.findFirst({ where: { answerId, madeBy: 'program' }, orderBy: { id: 'desc' } });
  return row === null ? null : toMark(row);
}
