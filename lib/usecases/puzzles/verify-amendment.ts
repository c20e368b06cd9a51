// The new terms of a published puzzle are verified into the same book as the old ones (rule A5): a row carries
// its position, budgets and bounds. Nothing public depends on it.

import type { SolutionBook } from '#lib/book/solution-book.ts';
import { ENGINE_VERSION } from '#lib/engine/engine-version.ts';
import { log } from '#lib/machine/log.ts';
import {
  type AmendmentRecord,
  loadOpenAmendment,
  saveAmendmentFailed,
  saveAmendmentVerified,
} from '#lib/store/amendments.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { toJson } from '#lib/store/json.ts';
import { appendLog } from '#lib/store/log.ts';
import { beginProgress, endProgress } from '#lib/store/progress.ts';
import type { Verify } from './fill-book.ts';
import { fillBook } from './fill-book.ts';
import { claimOf, reportOf } from './soundness.ts';

/** Verifies the amendment in the making. Begun again, it goes on from the rows that are there. */
export async function verifyAmendment(input: {
  readonly puzzleId: number;
  readonly verify: Verify;
}): Promise<void> {
  const { puzzleId, verify } = input;
  const amendment = await loadOpenAmendment(db(), puzzleId);
  if (amendment === null || amendment.state === 'verified') return;
  const isWanted = async () => (await loadOpenAmendment(db(), puzzleId))?.id === amendment.id;
  await beginProgress(db(), puzzleId, 'running');
  try {
    const book = await fillBook({ puzzleId, terms: amendment.terms, verify, isWanted });
    if (book !== null) await keep(amendment, book);
  } catch (error) {
    if (!(await isWanted())) return;
    const why = (error instanceof Error ? error.message : String(error)).slice(0, 500);
    await saveAmendmentFailed(db(), amendment.id, why);
    await endProgress(db(), puzzleId, why);
    log().error({ puzzleId, amendment: amendment.id, problem: why }, 'a verification failed');
    throw error;
  }
}

async function keep({ id, puzzleId, terms }: AmendmentRecord, book: SolutionBook): Promise<void> {
  const { claim, keys } = claimOf(terms, book);
  const report = toJson(reportOf(terms, book));
  const rows = book.rows();
  const failed = rows.filter((row) => row.check === 'failed').length;
  await inTransaction(async (tx) => {
    // Cancelled meanwhile: nobody waits for it.
    if (!(await saveAmendmentVerified(tx, id, { claim, report, engineVersion: ENGINE_VERSION }))) return;
    await endProgress(tx, puzzleId, null);
    if (failed > 0) await appendLog(tx, { kind: 'check-failed', puzzleId, details: { rows: failed } });
    const details = { amendment: id, claim, keys, verdicts: rows.length, engine: ENGINE_VERSION };
    await appendLog(tx, { kind: 'amendment-verified', puzzleId, details });
  });
}
