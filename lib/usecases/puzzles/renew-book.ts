// A new engine version is a new book by re-verification (mechanics). Verdicts of two versions never stand in one
// book; so before a book of an earlier version can grow, its first questions are asked anew, and everybody is marked
// again by the new one.

import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import { db, inTransaction, type Tx } from '#lib/store/client.ts';
import { listFormerTerms, loadTermsOf, saveRenewedFormer } from '#lib/store/former-terms.ts';
import { toJson } from '#lib/store/json.ts';
import { appendLog, isLogged } from '#lib/store/log.ts';
import { holdMarking, saveRenewed } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle, loadTerms, type PuzzleRecord } from '#lib/store/puzzles.ts';
import { gradeAgain } from '../answers/grade-again.ts';
import type { Verify } from './fill-book.ts';
import { fillBook } from './fill-book.ts';
import { claimOf, reportOf } from './soundness.ts';

/** The engine version of the book that marks under these terms rest on; null where they were never verified. */
export async function bookVersionOf(tx: Tx, puzzle: PuzzleRecord, revision: number): Promise<string | null> {
  if (revision === puzzle.revision) return puzzle.engineVersion;
  const former = (await listFormerTerms(tx, puzzle)).find((one) => one.revision === revision);
  return former?.engineVersion ?? puzzle.engineVersion;
}

/**
 * Makes the book of this version and lets marks rest on it; false where the claim does not stand by it. Then the
 * former book stays in force, and what it lacks needs the host: a puzzle that is public loses its claim by nobody
 * but a person (rule A5).
 */
export async function renewBook(of: {
  readonly puzzle: PuzzleRecord;
  readonly revision: number;
  readonly verify: Verify;
}): Promise<boolean> {
  const { puzzle, revision, verify } = of;
  const puzzleId = puzzle.id;
  // Found out once for all who ask: a version gives the same verdicts again.
  const refused = { revision, to: ENGINE_VERSION, isTaken: false };
  if (await isLogged(db(), { puzzleId, kind: 'book-renewed', details: refused })) return false;
  const terms = await loadTermsOf(db(), puzzle, revision);
  const book = await fillBook({ puzzleId, terms, verify });
  if (book === null) return false;
  const { claim, keys } = claimOf(terms, book);
  return inTransaction(async (tx) => {
    await holdMarking(tx, puzzleId);
    const now = await loadPuzzle(tx, { id: puzzleId });
    // Amended meanwhile: what is in force now is looked at anew.
    if (now === null || now.revision !== puzzle.revision) return true;
    const isInForce = revision === now.revision;
    if (isInForce && JSON.stringify(await loadTerms(tx, now)) !== JSON.stringify(terms)) return true;
    const from = await bookVersionOf(tx, now, revision);
    const found = { claim, report: toJson(reportOf(terms, book)), engineVersion: ENGINE_VERSION };
    const isTaken = isInForce
      ? await saveRenewed(tx, puzzleId, found)
      : await saveRenewedFormer(tx, { puzzleId, revision, engineVersion: ENGINE_VERSION });
    if (isTaken) {
      await gradeAgain(tx, now, { answers: 'all', reason: '', memberId: null });
      await enqueue(tx, 'mark-answers', { puzzleId });
    }
    const versions = { from: from ?? '', to: ENGINE_VERSION };
    const details = { revision, ...versions, claim, keys, isTaken };
    await appendLog(tx, { kind: 'book-renewed', puzzleId, details });
    return isTaken;
  }, 60_000);
}
