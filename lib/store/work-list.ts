// Unmarked answers are the work list of marking: claimed in batches, skipped where another worker
// has them, done when the marks are committed.

import { type AnswerRecord, toAnswer } from './answers.ts';
import type { Tx } from './client.ts';

/** Tries that marking an answer may begin without coming to an end. */
const MOST_TRIES = 3;

/** Answers that share a batch, by how often marking them was begun without an end: what ends a worker is soon alone. */
const SHARING = [200, 14, 1] as const;

/**
 * Claims a batch for this transaction: those never tried come first, or with `triedFirst` the others; of them the
 * oldest. What is locked is the solver, not the answer: which of a solver's answers counts is decided along with
 * the mark, by one worker at a time. New answers may arrive meanwhile.
 */
export async function claimAnswers(
  tx: Tx,
  puzzleId: number,
  { triedFirst = false }: { readonly triedFirst?: boolean } = {},
): Promise<AnswerRecord[]> {
  // Two questions, not one order: the first is answered from the index of the work list, however long it is.
  const fresh = () => tx.$queryRaw<{ id: number; tries: number }[]>`
    select answer.id, 0 as tries from answer join solver on solver.id = answer.solver_id
    where answer.puzzle_id = ${puzzleId} and answer.work = 'to-mark' and answer.tries = 0
    order by answer.id limit ${SHARING[0]} for no key update of solver skip locked`;
  const tried = () => tx.$queryRaw<{ id: number; tries: number }[]>`
    select answer.id, least(answer.tries, 2) as tries from answer join solver on solver.id = answer.solver_id
    where answer.puzzle_id = ${puzzleId} and answer.work = 'to-mark' and answer.tries > 0
    order by least(answer.tries, 2), answer.id limit ${SHARING[1]} for no key update of solver skip locked`;
  const [ask, otherwise] = triedFirst ? [tried, fresh] : [fresh, tried];
  const first = await ask();
  const rows = first.length > 0 ? first : await otherwise();
  const tries = rows[0]?.tries ?? 0;
  const alike = rows.filter((row) => row.tries === tries).slice(0, SHARING[tries]);
  const ids = alike.map((row) => row.id);
  const answers = await tx.answer.findMany({ where: { id: { in: ids } }, orderBy: { id: 'asc' } });
  return answers.map(toAnswer);
}

/**
 * Counts a try for each of these answers, whose solvers the caller's own transaction holds. To be committed before
 * the work begins: whatever ends the process then cannot undo the count.
 */
export async function countTries(tx: Tx, ids: readonly number[]): Promise<void> {
  await tx.$executeRaw`update answer set tries = tries + 1 where id = any(${[...ids]})`;
}

/** Takes the count back where the machine failed and no answer is to blame. */
export async function forgetTries(tx: Tx, ids: readonly number[]): Promise<void> {
  if (ids.length === 0) return;
  await tx.$executeRaw`
    update answer set tries = greatest(tries - 1, 0) where id in (
      select id from answer where id = any(${[...ids]}) and work = 'to-mark' for no key update skip locked)`;
}

/** Was marking this answer begun as often as it may be, without an end? */
export function isTriedOut({ tries }: Pick<AnswerRecord, 'tries'>): boolean {
  return tries >= MOST_TRIES;
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

/** Notes what is left to do for answers; a try that came to its end is not counted. */
export async function saveWork(
  tx: Tx,
  ids: readonly number[],
  work: 'to-mark' | 'lacking' | 'done' | 'parked',
): Promise<void> {
  if (ids.length === 0) return;
  await tx.$executeRaw`
    update answer set work = ${work}, tries = case when ${work} = 'parked' then tries else 0 end
    where id = any(${[...ids]}) and work <> ${work}`;
}

/** Notes that an answer asked the book for more positions. */
export async function addAsked(tx: Tx, id: number, count: number): Promise<void> {
  await tx.$executeRaw`update answer set asked = asked + ${count} where id = ${id}`;
}

/** Parks an answer that could not be marked and has no try left; gives whether it had none. */
export async function parkTried(tx: Tx, id: number): Promise<boolean> {
  const parked = await tx.$executeRaw`
    update answer set work = 'parked', tries = ${MOST_TRIES} where id = ${id} and tries >= ${MOST_TRIES}`;
  return parked > 0;
}

/**
 * Puts every answer of a puzzle back on the list: after a ruling, a moved close, a new book. What was set aside
 * stays so with its mark until somebody tries it again.
 */
export function putAllBack(tx: Tx, puzzleId: number): Promise<number> {
  return tx.$executeRaw`
    update answer set work = 'to-mark', tries = 0
    where puzzle_id = ${puzzleId} and work <> 'to-mark' and withdrawn_at is null
      and (work <> 'parked' or not exists (select from mark where mark.answer_id = answer.id and mark.is_current))`;
}

/** Puts the named answers back on the list; the same holds for those that were set aside. */
export function putBack(tx: Tx, ids: readonly number[]): Promise<number> {
  return tx.$executeRaw`
    update answer set work = 'to-mark', tries = 0
    where id = any(${[...ids]}) and work <> 'to-mark' and withdrawn_at is null
      and (work <> 'parked' or not exists (select from mark where mark.answer_id = answer.id and mark.is_current))`;
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
