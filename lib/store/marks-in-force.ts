// Marks in force with what a regrade asks about their answers: the answer itself, a person's word, whether
// the name was read out. After the reveal nothing but a regrade or a person changes them (rule A7).

import { type AnswerRecord, STANDINGS, type Standing, toAnswer } from './answers.ts';
import type { Tx } from './client.ts';
import { loadProgramMark, type MarkRecord, toMark } from './marks.ts';
import { oneOf } from './one-of.ts';

/** Which answers of a puzzle. */
export type WhichAnswers = 'all' | readonly number[];

/** An answer with its mark in force. */
export interface AnswerInForce {
  readonly answer: AnswerRecord;
  /** Solver under whose name it is read out: joins are followed. */
  readonly readOutAs: number;
  readonly mark: MarkRecord;
  /** The program's newest mark: `mark` itself, or what stands beside a person's word. */
  readonly program: MarkRecord | null;
}

function idsOf(answers: WhichAnswers): number[] | null {
  return answers === 'all' ? null : [...answers];
}

/** Numbers of the answers that have a mark in force, above a number, lowest first. */
async function listIds(
  tx: Tx,
  puzzleId: number,
  page: { readonly answers: WhichAnswers; readonly after: number; readonly most: number },
): Promise<number[]> {
  const ids = idsOf(page.answers);
  const rows = await tx.$queryRaw<{ id: number }[]>`
    select a.id from answer a join mark m on m.answer_id = a.id and m.is_current
    where a.puzzle_id = ${puzzleId} and a.withdrawn_at is null and a.id > ${page.after}
      and (${ids}::int[] is null or a.id = any(${ids}::int[]))
    order by a.id limit ${page.most}`;
  return rows.map((row) => row.id);
}

/** How many answers have a mark in force. */
export async function countInForce(tx: Tx, puzzleId: number, answers: WhichAnswers): Promise<number> {
  const ids = idsOf(answers);
  const rows = await tx.$queryRaw<{ count: number }[]>`
    select count(*)::int as count from answer a join mark m on m.answer_id = a.id and m.is_current
    where a.puzzle_id = ${puzzleId} and a.withdrawn_at is null
      and (${ids}::int[] is null or a.id = any(${ids}::int[]))`;
  return rows[0]?.count ?? 0;
}

/** A page of answers with their marks in force, lowest number first; withdrawn ones are left out. */
export async function listInForce(
  tx: Tx,
  puzzleId: number,
  page: { readonly answers: WhichAnswers; readonly after: number; readonly most: number },
): Promise<AnswerInForce[]> {
  const ids = await listIds(tx, puzzleId, page);
  const rows = await tx.answer.findMany({
    where: { id: { in: ids } },
    include: { marks: { where: { isCurrent: true } }, solver: { select: { id: true, joinedIntoId: true } } },
    orderBy: { id: 'asc' },
  });
  const found: AnswerInForce[] = [];
  for (const { marks, solver, ...answer } of rows) {
    const [row] = marks;
    if (row === undefined) continue;
    const mark = toMark(row);
    const program = mark.overrule === null ? mark : await loadProgramMark(tx, answer.id);
    found.push({ answer: toAnswer(answer), readOutAs: solver.joinedIntoId ?? solver.id, mark, program });
  }
  return found;
}

/** Which of these answers have a mark in force. */
export async function pickMarked(tx: Tx, ids: readonly number[]): Promise<Set<number>> {
  const rows = await tx.mark.findMany({
    where: { answerId: { in: [...ids] }, isCurrent: true },
    select: { answerId: true },
  });
  return new Set(rows.map((row) => row.answerId));
}

/** Marks in force of these answers, by answer. */
export async function loadMarksInForce(tx: Tx, ids: readonly number[]): Promise<Map<number, MarkRecord>> {
  const rows = await tx.mark.findMany({ where: { answerId: { in: [...ids] }, isCurrent: true } });
  return new Map(rows.map((row) => [row.answerId, toMark(row)]));
}

/** Solvers whose names were read out with a puzzle. */
export async function listReadOut(tx: Tx, puzzleId: number): Promise<Set<number>> {
  const rows = await tx.$queryRaw<{ solver: number }[]>`
    select distinct jsonb_array_elements_text(details::jsonb -> 'solvers')::int as solver
    from log where kind = 'sheet-read' and puzzle_id = ${puzzleId}`;
  return new Set(rows.map((row) => row.solver));
}

/** Who wrote an answer, and whether it counts. */
export interface WhoseAnswer {
  readonly name: string | null;
  readonly standing: Standing;
}

/** Names and standings of answers, by answer; one withdrawn meanwhile is not among them. */
export async function loadWhose(tx: Tx, ids: readonly number[]): Promise<Map<number, WhoseAnswer>> {
  const rows = await tx.$queryRaw<{ id: number; name: string | null; standing: string }[]>`
    select a.id, coalesce(s.name, a.name) as name, a.standing from answer a join solver s on s.id = a.solver_id
    where a.id = any(${[...ids]}) and a.withdrawn_at is null`;
  return new Map(rows.map(({ id, name, standing }) => [id, { name, standing: oneOf(STANDINGS, standing) }]));
}
