// What would the answers of a regrade be worth now? Judged page by page on the book as it is; nothing is
// written. Rule A7: what comes out is the difference to the marks in force.

import { isDeepStrictEqual } from 'node:util';
import type { Wanted } from '#lib/book/book-row.ts';
import { log } from '#lib/machine/log.ts';
import {
  costsItsSolver,
  type GradedMark,
  isOtherMark,
  previewRegrade,
  type Regraded,
} from '#lib/marking/regrade.ts';
import type { Tx } from '#lib/store/client.ts';
import type { NewMark } from '#lib/store/marks.ts';
import { type AnswerInForce, listInForce, listReadOut, loadMarksInForce } from '#lib/store/marks-in-force.ts';
import type { PuzzleRecord } from '#lib/store/puzzles.ts';
import type { ExpectedMark, RegradeScope, StoredPreview } from '#lib/store/regrades.ts';
import { listCandidates, loadTimeliness } from '#lib/store/standing-of-answers.ts';
import { judgeAnswer, type Opinion } from './judge-answer.ts';
import { loadBook } from './loaded-book.ts';
import { toNewMark } from './new-mark.ts';

const PAGE = 200;

/** An answer with what it would be marked; null where the book lacks something, or it could not be judged. */
export interface JudgedAnswer extends AnswerInForce {
  readonly next: NewMark | null;
  readonly lacking: readonly Wanted[];
}

/** Pages of answers in the order of their numbers, each judged on the book as it then is. */
export async function* judgedPages(
  tx: Tx,
  puzzle: PuzzleRecord,
  answers: RegradeScope['answers'],
): AsyncGenerator<JudgedAnswer[]> {
  for (let after = 0; ; ) {
    const page = await listInForce(tx, puzzle.id, { answers, after, most: PAGE });
    const last = page.at(-1);
    const book = await loadBook(tx, puzzle);
    if (last === undefined || book === null) return;
    const solvers = [...new Set(page.map(({ answer }) => answer.solverId))];
    const timeliness = await loadTimeliness(tx, puzzle.id, solvers);
    yield page.map((one): JudgedAnswer => {
      // What was set aside may end the process; it waits for "try again" (trust test F11).
      const isParked = one.answer.work === 'parked';
      const opinion = isParked ? null : judged(() => judgeAnswer(book, one.answer), one.answer.id);
      if (opinion === null) return { ...one, next: null, lacking: [] };
      const [next = null] = toNewMark(opinion, timeliness.get(one.answer.id) ?? 'in-time');
      return { ...one, next, lacking: opinion.wants };
    });
    after = last.answer.id;
  }
}

// An answer that cannot be judged keeps the mark it has; the others do not suffer for it.
function judged(judge: () => Opinion, answer: number): Opinion | null {
  try {
    return judge();
  } catch (error) {
    log().error({ answer, problem: String(error) }, 'an answer could not be marked again');
    return null;
  }
}

/** The difference as it is stored, and what the book lacks for more: an answer that lacks something keeps its mark. */
export interface WorkedOut {
  readonly stored: StoredPreview;
  readonly lacking: readonly Wanted[];
}

/** So often the book is asked for one regrade: along a line it learns a move each time. */
const MOST_ASKS = 60;

/** Is it still to be asked? Once it has been asked too often, what it does not answer is left out. */
export function isAskingOn({ lacking }: WorkedOut, { asks }: RegradeScope): boolean {
  return lacking.length > 0 && asks < MOST_ASKS;
}

/** Works the difference out; null where `onPage`, told how many are done, says that nobody wants it any more. */
export async function workOutMarks(
  tx: Tx,
  puzzle: PuzzleRecord,
  {
    answers,
    onPage,
  }: {
    readonly answers: RegradeScope['answers'];
    readonly onPage: (done: number) => Promise<boolean>;
  },
): Promise<WorkedOut | null> {
  const readOut = await listReadOut(tx, puzzle.id);
  const regraded: RegradedOf[] = [];
  const expected: ExpectedMark[] = [];
  const lacking = new Map<string, Wanted>();
  let unjudged = 0;
  let done = 0;
  for await (const page of judgedPages(tx, puzzle, answers)) {
    for (const one of page) {
      for (const want of one.lacking) lacking.set(JSON.stringify(want), want);
      if (one.next === null) {
        unjudged += 1;
        continue;
      }
      const difference = differenceOf(one, one.next, readOut);
      regraded.push(difference);
      if (isOtherMark(difference.before, difference.after))
        expected.push(expectedMark(one.answer.id, one.mark.id, one.next));
    }
    done += page.length;
    if (!(await onPage(done))) return null;
  }
  const costly = await findCostly(tx, puzzle, regraded);
  const told = regraded.map((one) => ({ ...one, isCostly: costly.has(one.solverId) }));
  const preview = previewRegrade(told, { isRevealed: true });
  return { stored: { v: 1, preview, expected, unjudged }, lacking: [...lacking.values()] };
}

type RegradedOf = Regraded & { readonly solverId: number };

// Under a person's word it is the program's own opinions that are compared.
function differenceOf(
  { answer, mark, program, readOutAs }: JudgedAnswer,
  next: NewMark,
  readOut: ReadonlySet<number>,
): RegradedOf {
  return {
    answerId: answer.id,
    solverId: answer.solverId,
    before: gradedOf(program ?? mark),
    after: gradedOf(next),
    isOverruled: mark.overrule !== null,
    isReadOut: readOut.has(readOutAs),
  };
}

/** What a mark of the preview must be equal to when it is written. */
export function expectedMark(answerId: number, formerMark: number, mark: NewMark): ExpectedMark {
  return [answerId, formerMark, mark.points, mark.p, mark.r, mark.atMove];
}

/** Do two previews say the same? Answers that stay as they are do not matter. */
export function isSamePreview(a: StoredPreview, b: StoredPreview): boolean {
  const told = ({ preview, expected }: StoredPreview) => [preview.changes, preview.overruled, expected];
  return isDeepStrictEqual(told(a), told(b));
}

function gradedOf({ outcome, points, p, r, atMove }: GradedMark): GradedMark {
  return { outcome, points, p, r, atMove };
}

/** Solvers of whom a worse answer would count than counts now. */
async function findCostly(
  tx: Tx,
  puzzle: PuzzleRecord,
  regraded: readonly RegradedOf[],
): Promise<Set<number>> {
  const turned = regraded.filter(
    ({ before, after, isOverruled }) => !isOverruled && isRead(before) !== isRead(after),
  );
  const solverIds = [...new Set(turned.map(({ solverId }) => solverId))];
  if (solverIds.length === 0) return new Set();
  const candidates = await listCandidates(tx, puzzle.id, solverIds);
  const marks = await loadMarksInForce(
    tx,
    candidates.map(({ id }) => id),
  );
  const next = new Map(
    regraded.filter(({ isOverruled }) => !isOverruled).map(({ answerId, after }) => [answerId, after]),
  );
  const own = candidates.map((one) => {
    const mark = marks.get(one.id);
    const before = mark === undefined ? null : gradedOf(mark);
    return { ...one, before, after: next.get(one.id) ?? before };
  });
  const bySolver = Map.groupBy(own, ({ solverId }) => solverId);
  return new Set(solverIds.filter((id) => costsItsSolver(bySolver.get(id) ?? [], puzzle)));
}

function isRead({ outcome }: GradedMark): boolean {
  return outcome !== 'unreadable' && outcome !== 'chatter';
}
