// A puzzle with a real book, answers from real texts, and marks made by the marking itself: everything that
// the public pages show after a reveal. The engine runs in this process, without threads or a worker.

import { askAll } from '#lib/book/question.ts';
import { createBook } from '#lib/book/solution-book.ts';
import { DEFAULT_TERMS, type PuzzleTerms } from '#lib/book/terms.ts';
import { createJudge, verifyLacking } from '#lib/book/verify.ts';
import { createEngine, type Engine } from '#lib/engine/create-engine.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { randomToken } from '#lib/machine/tokens.ts';
import { appendBookRows, budgetsKey } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { nextWants, strikeWants } from '#lib/store/wants.ts';
import { markAnswers } from '#lib/usecases/answers/mark-answers.ts';
import { type Submission, type Submitted, submitAnswer } from '#lib/usecases/answers/submit-answer.ts';
import { buildPuzzle, buildShow } from './build-show.ts';
import { accepted, positionOf } from './positions.ts';

/** F. Healey, published 1861: White mates in three by 1 Rh1, the rook clearing the line for the queen. */
export const HEALEY: PuzzleTerms = {
  ...DEFAULT_TERMS,
  fen: '8/1n3Np1/1N4Q1/1bkP4/p1p2p2/P1P2R2/3P2PK/B2R4 w - - 0 1',
  task: { kind: 'mate', moves: 3 },
  published: ['1. Rh1 Bd7 2. Qb1'],
};

let engine: Engine | null = null;

/** Fills the book of a puzzle with every first move. */
export async function fillBook(puzzleId: number, terms: PuzzleTerms): Promise<void> {
  engine ??= createEngine({ hashMiB: 16 });
  const movesLeft = terms.task.kind === 'mate' ? terms.task.moves : null;
  const question = askAll(positionOf(terms.fen), movesLeft, createBook([]));
  if (question === null) return;
  await appendBookRows(db(), puzzleId, createJudge(engine, terms)(question), budgetsKey(terms));
  await db().$executeRaw`update puzzle set engine_version = ${ENGINE_VERSION} where id = ${puzzleId}`;
}

/** Sends a text as a viewer would, with a key and a device of its own. */
export async function send(slug: string, text: string, more: Partial<Submission> = {}): Promise<Submitted> {
  return accepted(
    await submitAnswer({
      slug,
      text,
      meant: null,
      name: '',
      clientKey: randomToken(),
      channel: 'page',
      device: randomToken(),
      receipt: null,
      signin: null,
      locale: 'en',
      ...more,
    }),
  );
}

/** Marks everything, verifying what the book lacks. */
export async function markEverything(puzzleId: number, terms: PuzzleTerms): Promise<void> {
  engine ??= createEngine({ hashMiB: 16 });
  for (;;) {
    await markAnswers({ puzzleId });
    const wants = await nextWants(db(), puzzleId);
    if (wants === null) return;
    await appendBookRows(db(), puzzleId, verifyLacking(engine, terms, wants), budgetsKey(terms));
    await strikeWants(db(), puzzleId, wants);
  }
}

/** Closes and reveals at once, by hand. */
export async function revealNow(puzzleId: number): Promise<void> {
  await db().$executeRaw`
    update puzzle set closes_at = clock_timestamp(), closed_at = clock_timestamp(), revealed_at = clock_timestamp()
    where id = ${puzzleId}`;
}

/** Healey's problem, open, with its book. */
export async function buildHealey({
  place,
  published = HEALEY.published,
}: {
  place?: { showId: number; episodeId: number };
  published?: readonly string[];
} = {}) {
  const show = place ?? (await buildShow());
  const terms = { ...HEALEY, published };
  const puzzle = await buildPuzzle(show, { terms });
  await fillBook(puzzle.puzzleId, terms);
  return { ...show, ...puzzle, terms };
}
