// The unmarked answers of a puzzle are marked, batch by batch. A batch is one transaction: a worker
// that is killed loses nothing and marks nothing twice. That it was begun is counted before, in a transaction
// of its own, so that an answer which ends the worker is given up after three tries (trust test F11).

import { sleep } from '#lib/machine/clock.ts';
import { config } from '#lib/machine/config.ts';
import { log } from '#lib/machine/log.ts';
import { ring } from '#lib/queue/enqueue.ts';
import type { AnswerRecord } from '#lib/store/answers.ts';
import { db, inTransaction, type Tx } from '#lib/store/client.ts';
import { isDataRefused } from '#lib/store/data-refused.ts';
import { appendLog } from '#lib/store/log.ts';
import { appendMarks } from '#lib/store/marks.ts';
import { pickMarked } from '#lib/store/marks-in-force.ts';
import { holdReveal } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle, type PuzzleRecord } from '#lib/store/puzzles.ts';
import { loadTimeliness } from '#lib/store/standing-of-answers.ts';
import { addWants } from '#lib/store/wants.ts';
import {
  addAsked,
  claimAnswers,
  countTries,
  forgetTries,
  isTriedOut,
  parkTried,
  saveAddressed,
  saveWork,
} from '#lib/store/work-list.ts';
import { leaveToRegrade } from './grade-again.ts';
import { judgeAnswer, type Opinion } from './judge-answer.ts';
import { type LoadedBook, loadBook } from './loaded-book.ts';
import { toNewMark } from './new-mark.ts';
import { parkedOpinion } from './parked-mark.ts';
import { renewStandings } from './renew-standings.ts';

const BATCH_TIMEOUT_MS = 60_000;
const TURNS = 10;

/** What a run did. */
export interface Marked {
  readonly marked: number;
  readonly lacking: number;
}

/** Marks all that waits, and rings for the book where something is lacking. */
export async function markAnswers(input: { readonly puzzleId: number }): Promise<Marked> {
  let marked = 0;
  let lacking = 0;
  for (let turn = 1; ; turn += 1) {
    // While new answers keep coming in, those that were begun before have their turn all the same.
    const batch = await tryBatch(input.puzzleId, { triedFirst: turn % TURNS === 0 });
    marked += batch.marked;
    lacking += batch.lacking;
    if (batch.claimed === 0) break;
  }
  if (lacking > 0) await ring(db(), 'extend-book', { puzzleId: input.puzzleId });
  return { marked, lacking };
}

type Batch = Marked & { readonly claimed: number };
const NOTHING: Batch = { claimed: 0, marked: 0, lacking: 0 };

async function tryBatch(puzzleId: number, turn: { readonly triedFirst: boolean }): Promise<Batch> {
  const begun: number[] = [];
  try {
    return await inTransaction(async (tx) => {
      // After a lost race the batch is another one.
      await forget(begun.splice(0));
      return markBatch(tx, puzzleId, { ...turn, begun });
    }, BATCH_TIMEOUT_MS);
  } catch (error) {
    // What the database will not keep is some answer's fault, and tried in ever smaller batches.
    if (!isDataRefused(error)) await forget(begun);
    throw error;
  }
}

// The machine failed and may still fail; then the count stays, which parks nobody before the third time.
async function forget(begun: readonly number[]): Promise<void> {
  try {
    await forgetTries(db(), begun);
  } catch (error) {
    log().warn({ answers: begun.length, problem: String(error) }, 'tries stay counted that were none');
  }
}

async function markBatch(
  tx: Tx,
  puzzleId: number,
  { begun, triedFirst }: { readonly begun: number[]; readonly triedFirst: boolean },
): Promise<Batch> {
  const isRevealed = await holdReveal(tx, puzzleId);
  const puzzle = await loadPuzzle(tx, { id: puzzleId });
  const book = puzzle === null ? null : await loadBook(tx, puzzle);
  if (puzzle === null || book === null) return NOTHING;
  const claimed = await claimAnswers(tx, puzzleId, { triedFirst });
  if (claimed.length === 0) return NOTHING;
  const ids = claimed.map((answer) => answer.id);
  // On a connection of its own, while this one holds the solvers: nobody else can count the same try.
  await inTransaction((own) => countTries(own, ids));
  begun.push(...ids);
  // What is public does not change by itself (rule A7).
  const kept = isRevealed ? await pickMarked(tx, ids) : new Set<number>();
  const answers = claimed.filter((answer) => !kept.has(answer.id));
  const done = await markWithin(tx, { puzzle, book, answers });
  if (kept.size > 0) await leaveToRegrade(tx, puzzleId, [...kept]);
  return { claimed: claimed.length, ...done };
}

/** Marks these answers, whose solvers the caller holds, within the caller's transaction. */
export async function markWithin(
  tx: Tx,
  of: {
    readonly puzzle: PuzzleRecord;
    readonly book: LoadedBook;
    readonly answers: readonly AnswerRecord[];
  },
): Promise<Marked> {
  const { puzzle, book, answers } = of;
  const puzzleId = puzzle.id;
  const opinions: Opinion[] = [];
  const parked = new Map<number, Opinion>();
  for (const answer of answers) {
    if (isTriedOut(answer)) {
      await parkTried(tx, answer.id);
      parked.set(answer.id, parkedOpinion(book, answer));
      log().error({ answer: answer.id }, 'an answer is set aside: the worker ended whenever it was tried');
      continue;
    }
    try {
      opinions.push(judgeAnswer(book, answer));
    } catch (error) {
      const isParked = await parkTried(tx, answer.id);
      if (isParked) parked.set(answer.id, parkedOpinion(book, answer));
      log().error({ answer: answer.id, isParked, problem: String(error) }, 'an answer could not be marked');
    }
  }
  const solverIds = [...new Set(answers.map((answer) => answer.solverId))];
  const timeliness = await loadTimeliness(tx, puzzleId, solverIds);
  const lacking = await askForMore(tx, opinions);
  const marks = [...opinions, ...parked.values()].flatMap((opinion) =>
    toNewMark(opinion, timeliness.get(opinion.answer.id) ?? 'in-time'),
  );
  const changed = await appendMarks(tx, marks);
  await saveWork(
    tx,
    marks.map((mark) => mark.answerId).filter((id) => !parked.has(id)),
    'done',
  );
  await saveAddressed(
    tx,
    opinions.filter((one) => one.isAddressed).map((one) => one.answer.id),
  );
  await renewStandings(tx, puzzle, solverIds);
  if (config().pauseBeforeCommitMs > 0) await pauseForTests(puzzleId, marks.length);
  if (marks.length > 0)
    await appendLog(tx, { kind: 'answers-marked', puzzleId, details: { marked: marks.length, changed } });
  return { marked: marks.length, lacking };
}

// What is lacking is asked for; a marker that may not ask for more calls the rest unclear.
async function askForMore(tx: Tx, opinions: readonly Opinion[]): Promise<number> {
  const waiting: number[] = [];
  for (const { answer, wants } of opinions) {
    if (wants.length === 0) continue;
    await addWants(tx, answer.puzzleId, answer.id, wants, answer.asked);
    const places = new Set(
      wants.map(({ position, movesLeft, revision }) => `${position} ${movesLeft} ${revision}`),
    );
    await addAsked(tx, answer.id, places.size);
    waiting.push(answer.id);
  }
  await saveWork(tx, waiting, 'lacking');
  return waiting.length;
}

// For the test that kills workers between "mark written" and "batch committed": says that it is there.
async function pauseForTests(puzzleId: number, marks: number): Promise<void> {
  log().info({ puzzleId, marks }, 'pausing before the commit');
  await sleep(config().pauseBeforeCommitMs);
}
