// Positions that nobody foresaw are verified on demand and join the book; the answers that waited for
// them go back on the work list.

import type { BookRow, Wanted } from '#lib/book/book-row.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { log } from '#lib/machine/log.ts';
import { MOST_ASKED } from '#lib/marking/create-marker.ts';
import { ring } from '#lib/queue/enqueue.ts';
import { appendBookRows, budgetsKey } from '#lib/store/books.ts';
import { db, inTransaction, type Tx } from '#lib/store/client.ts';
import { loadTermsOf } from '#lib/store/former-terms.ts';
import { appendLog } from '#lib/store/log.ts';
import { loadPuzzle, type PuzzleRecord } from '#lib/store/puzzles.ts';
import { loadOpenRegrade } from '#lib/store/regrades.ts';
import { giveUpWants, nextWants, noteFailedWant, strikeWants } from '#lib/store/wants.ts';
import type { Verify } from './fill-book.ts';
import { bookVersionOf, renewBook } from './renew-book.ts';

/**
 * Verifies everything that is wanted, one position at a time. Gives how many verdicts were new. What cannot be
 * verified holds up nothing else: it is tried again, three times in all, and then left to the host.
 */
export async function extendBook(input: {
  readonly puzzleId: number;
  readonly verify: Verify;
  /** Is this fault the end of the verifier, and no fault of what it was asked? */
  readonly isItsEnd?: (fault: unknown) => boolean;
}): Promise<number> {
  const { puzzleId, verify, isItsEnd = () => false } = input;
  let added = 0;
  let fault: unknown = null;
  // Rows of wants that failed in this run.
  const passedOver: number[] = [];
  for (;;) {
    const lacking = await nextWants(db(), puzzleId, passedOver);
    const puzzle = await loadPuzzle(db(), { id: puzzleId });
    if (lacking === null || puzzle === null) break;
    // At each position anew: an amendment may have taken force meanwhile (rule A6).
    const revision = lacking[0]?.revision ?? puzzle.revision;
    const version = await bookVersionOf(db(), puzzle, revision);
    if (version !== null && version !== ENGINE_VERSION) {
      const renewed = await renew({ puzzle, revision, lacking }, { verify, isItsEnd });
      passedOver.push(...renewed.passedOver);
      fault = renewed.fault ?? fault;
      continue;
    }
    const terms = await loadTermsOf(db(), puzzle, revision);
    const ask = (some: readonly Wanted[]) => verify({ terms, lacking: some });
    const { rows, failed, ...found } = await verifyApart(lacking, { ask, isItsEnd });
    const freed = await inTransaction(async (tx) => {
      const count = await appendBookRows(tx, puzzleId, rows, budgetsKey(terms));
      added += count;
      const noted = await noteFailed(tx, puzzleId, { failed, fault: found.fault });
      passedOver.push(...noted.ids);
      if (noted.isTriedAgain) fault = found.fault;
      const answers = await strikeWants(tx, puzzleId, found.done);
      const mistaken = rows.filter((row) => row.check === 'failed').length;
      if (mistaken > 0) await appendLog(tx, { kind: 'check-failed', puzzleId, details: { rows: mistaken } });
      if (count > 0) await appendLog(tx, { kind: 'book-extended', puzzleId, details: { rows: count } });
      return answers;
    });
    if (freed > 0) await ring(db(), 'mark-answers', { puzzleId });
  }
  // A regrade waits for verdicts in nobody's name; it has no place on the work list.
  const open = await loadOpenRegrade(db(), puzzleId);
  if (open?.state === 'waiting') await ring(db(), 'regrade', { regradeId: open.id });
  if (fault !== null) throw fault;
  return added;
}

async function noteFailed(
  tx: Tx,
  puzzleId: number,
  { failed, fault }: { readonly failed: readonly Wanted[]; readonly fault: unknown },
): Promise<{ readonly ids: number[]; readonly isTriedAgain: boolean }> {
  const noted: number[] = [];
  let isTriedAgain = false;
  for (const want of failed) {
    const { ids, isGivenUp } = await noteFailedWant(tx, puzzleId, { want, mostAsked: MOST_ASKED });
    noted.push(...ids);
    isTriedAgain ||= !isGivenUp;
    log().error({ puzzleId, want, isGivenUp, problem: String(fault) }, 'a verdict was not found');
  }
  return { ids: noted, isTriedAgain };
}

/** Makes the book anew before it grows; where that cannot be done, what is wanted of it fails. */
async function renew(
  of: { readonly puzzle: PuzzleRecord; readonly revision: number; readonly lacking: readonly Wanted[] },
  by: { readonly verify: Verify; readonly isItsEnd: (fault: unknown) => boolean },
): Promise<{ readonly passedOver: readonly number[]; readonly fault: unknown }> {
  const { puzzle, revision, lacking } = of;
  const puzzleId = puzzle.id;
  let passedOver: readonly number[] = [];
  let fault: unknown = null;
  try {
    if (await renewBook({ puzzle, revision, verify: by.verify })) return { passedOver, fault };
    await inTransaction((tx) => giveUpWants(tx, puzzleId, { revision, mostAsked: MOST_ASKED }));
  } catch (problem) {
    if (by.isItsEnd(problem)) throw problem;
    await inTransaction(async (tx) => {
      const noted = await noteFailed(tx, puzzleId, { failed: lacking, fault: problem });
      await strikeWants(tx, puzzleId, []);
      passedOver = noted.ids;
      fault = noted.isTriedAgain ? problem : null;
    });
  }
  await ring(db(), 'mark-answers', { puzzleId });
  return { passedOver, fault };
}

interface Verified {
  readonly rows: readonly BookRow[];
  readonly done: readonly Wanted[];
  readonly failed: readonly Wanted[];
  readonly fault: unknown;
}

/** All moves of a position at once; where that fails, one by one, so that a bad one costs only itself. */
async function verifyApart(
  lacking: readonly Wanted[],
  by: {
    readonly ask: (some: readonly Wanted[]) => Promise<BookRow[]>;
    readonly isItsEnd: (fault: unknown) => boolean;
  },
): Promise<Verified> {
  try {
    return { rows: await by.ask(lacking), done: lacking, failed: [], fault: null };
  } catch (fault) {
    if (by.isItsEnd(fault)) throw fault;
    if (lacking.length <= 1) return { rows: [], done: [], failed: lacking, fault };
  }
  const parts: Verified[] = [];
  for (const one of lacking) parts.push(await verifyApart([one], by));
  return {
    rows: parts.flatMap(({ rows }) => rows),
    done: parts.flatMap(({ done }) => done),
    failed: parts.flatMap(({ failed }) => failed),
    fault: parts.find(({ failed }) => failed.length > 0)?.fault ?? null,
  };
}
