// Unmarked answers are the work list of marking: claimed in batches, skipped where another worker
// has them, done when the marks are committed.

import { type AnswerRecord, toAnswer } from './answers.ts';
import type { Tx } from './client.ts';

/**
 * Claims a batch for this transaction, oldest first. What is locked is the solver, not the answer:
 * which of a solver's answers counts is decided along with the mark, by one worker at a time. New
 * answers may arrive meanwhile.
 */
export async function claimAnswers(tx: Tx, puzzleId: number, limit: number): Promise<AnswerRecord[]> {
  const claimed = await tx.$queryRaw<{ id: number }[]>`
    select answer.id from answer join solver on solver.id = answer.solver_id
    where answer.puzzle_id = ${puzzleId} and answer.work = 'to-mark'
    order by answer.id limit ${limit} for no key update of solver skip locked`;
  const ids = claimed.map((row) => row.id);
  const rows = await tx.answer.findMany({ where: { id: { in: ids } }, orderBy: { id: 'asc' } });
  return rows.map(toAnswer);
}

/**
 * Answers whose mark in force is `unclear` by the program and that do not wait for the book, oldest
 * first; their solvers are held.
 */
export async function claimUnclear(tx: Tx, puzzleId: number): Promise<AnswerRecord[]> {
  const claimed = await tx.$queryRaw<{ id: number }[]>`
    select answer.id from mark join answer on answer.id = mark.answer_id join solver on solver.id = answer.solver_id
    where mark.puzzle_id = ${puzzleId} and mark.is_current and mark.outcome = 'unclear' and mark.made_by = 'program'
      and answer.withdrawn_at is null and answer.work in ('done', 'to-mark')
    order by solver.id, answer.id for no key update of solver`;
  const rows = await tx.answer.findMany({
    where: { id: { in: claimed.map((row) => row.id) }, withdrawnAt: null },
    orderBy: { id: 'asc' },
  });
  return rows.map(toAnswer);
}

/** Notes what is left to do for answers. */
export async function saveWork(
  tx: Tx,
  ids: readonly number[],
  work: 'to-mark' | 'lacking' | 'done' | 'parked',
): Promise<void> {
  if (ids.length === 0) return;
  await tx.$executeRaw`update answer set work = ${work} where id = any(${[...ids]}) and work <> ${work}`;
}

/** Notes that an answer asked the book for more positions. */
export async function addAsked(tx: Tx, id: number, count: number): Promise<void> {
  await tx.$executeRaw`update answer set asked = asked + ${count} where id = ${id}`;
}

/** Notes a failed try; at the third the answer is parked. Gives whether it was. */
export async function addTry(tx: Tx, id: number): Promise<boolean> {
  const rows = await tx.$queryRaw<{ parked: boolean }[]>`
    update answer set tries = tries + 1, work = case when tries + 1 >= 3 then 'parked' else work end
    where id = ${id} returning work = 'parked' as parked`;
  return rows[0]?.parked ?? false;
}

/** Puts every answer of a puzzle back on the list: after a ruling, a moved close, a new book. */
export function putAllBack(tx: Tx, puzzleId: number): Promise<number> {
  return tx.$executeRaw`
    update answer set work = 'to-mark', tries = 0
    where puzzle_id = ${puzzleId} and work <> 'to-mark' and withdrawn_at is null`;
}

/** Puts the named answers back on the list. */
export function putBack(tx: Tx, ids: readonly number[]): Promise<number> {
  return tx.$executeRaw`
    update answer set work = 'to-mark', tries = 0
    where id = any(${[...ids]}) and work <> 'to-mark' and withdrawn_at is null`;
}

/** Puts those back on the list that have no mark in force: nothing that is public changes by it. */
export function putUnmarkedBack(tx: Tx, puzzleId: number, ids: readonly number[] | 'all'): Promise<number> {
  const only = ids === 'all' ? null : [...ids];
  return tx.$executeRaw`
    update answer set work = 'to-mark', tries = 0
    where puzzle_id = ${puzzleId} and work <> 'to-mark' and withdrawn_at is null
      and (${only}::int[] is null or id = any(${only}::int[]))
      and not exists (select from mark where mark.answer_id = answer.id and mark.is_current)`;
}

/** Puts the answers of a puzzle that were set aside back on the list; gives their numbers. */
export async function putParkedBack(tx: Tx, puzzleId: number): Promise<number[]> {
  const rows = await tx.$queryRaw<{ id: number }[]>`
    update answer set work = 'to-mark', tries = 0
    where puzzle_id = ${puzzleId} and work = 'parked' and withdrawn_at is null returning id`;
  return rows.map((row) => row.id).sort((a, b) => a - b);
}

/** Puzzles with unmarked answers. */
export async function listPuzzlesToMark(tx: Tx): Promise<number[]> {
  const rows = await tx.$queryRaw<{ puzzle_id: number }[]>`
    select distinct puzzle_id from answer where work = 'to-mark'`;
  return rows.map((row) => row.puzzle_id);
}

/** Notes that the reader found answers which address somebody or only repeat another's (rule P4). */
export async function saveAddressed(tx: Tx, ids: readonly number[]): Promise<void> {
  if (ids.length === 0) return;
  await tx.$executeRaw`
    update answer set is_addressed = true where id = any(${[...ids]}) and is_addressed is distinct from true`;
}
