// The host's word on a regrade (rule A7): asks for one, says yes to its preview and one by one to what needs
// it, or drops it. Marks are written by the worker.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { enqueue, ring } from '#lib/queue/enqueue.ts';
import { db, inTransaction, type Tx } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import {
  holdRegrade,
  loadOpenRegrade,
  type RegradeRecord,
  saveRegradeAgreed,
  saveRegradeDecided,
} from '#lib/store/regrades.ts';
import { gradeAgain } from './grade-again.ts';

/** Why no regrade was asked for. */
export type AskReason =
  | { readonly code: 'unknown-puzzle' }
  | { readonly code: 'reason-empty' }
  | { readonly code: 'not-published' }
  | { readonly code: 'void' };

/**
 * Asks to have everybody marked again. Before the reveal that is done at once; afterwards a regrade waits for its
 * preview. Gives how many answers are marked again.
 */
export async function askRegrade(word: {
  readonly puzzleId: number;
  readonly memberId: number;
  readonly reason: string;
}): Promise<Result<{ readonly answers: number; readonly isPreviewed: boolean }, AskReason>> {
  const { puzzleId, memberId } = word;
  const reason = word.reason.trim();
  if (reason === '') return refuse({ code: 'reason-empty' });
  const asked = await inTransaction(async (tx) => {
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null) return refuse({ code: 'unknown-puzzle' } as const);
    if (puzzle.publishedAt === null) return refuse({ code: 'not-published' } as const);
    if (puzzle.voidedAt !== null) return refuse({ code: 'void' } as const);
    const answers = await gradeAgain(tx, puzzle, { answers: 'all', reason, memberId });
    const regrade = (await loadOpenRegrade(tx, puzzleId))?.id ?? null;
    await appendLog(tx, { kind: 'regrade-asked', puzzleId, memberId, details: { regrade, answers } });
    return ok({ answers, isPreviewed: regrade !== null });
  }, 60_000);
  if (asked.ok) await ring(db(), 'mark-answers', { puzzleId });
  return asked;
}

/** Which regrade, by whom. */
interface Word {
  readonly puzzleId: number;
  readonly regradeId: number;
  readonly memberId: number;
}

/** Why a regrade was not decided. */
export type DecideReason =
  | { readonly code: 'unknown-regrade' }
  /** Not worked out yet, or decided already. */
  | { readonly code: 'not-previewed' }
  /** The preview that the host looked at is not the one that is stored. */
  | { readonly code: 'preview-changed' }
  | { readonly code: 'not-in-preview'; readonly answerId: number };

/** Says yes to the preview of that round, and to the named changes one by one. */
export function agreeToRegrade(
  word: Word & { readonly round: number; readonly agreed: readonly number[] },
): Promise<Result<null, DecideReason>> {
  return inTransaction(async (tx) => {
    const held = await holdOf(tx, word);
    if (!held.ok) return held;
    const { state, stored, scope, id } = held.value;
    if (state !== 'previewed' || stored === null) return refuse({ code: 'not-previewed' });
    if (scope.round !== word.round) return refuse({ code: 'preview-changed' });
    const asked = new Set(
      stored.preview.changes.filter((one) => one.wordFor !== null).map((one) => one.answerId),
    );
    const stray = word.agreed.find((one) => !asked.has(one));
    if (stray !== undefined) return refuse({ code: 'not-in-preview', answerId: stray });
    const { puzzleId, memberId } = word;
    const agreed = [...new Set(word.agreed)].sort((a, b) => a - b);
    await saveRegradeAgreed(tx, held.value, { agreed, memberId });
    await enqueue(tx, 'regrade', { regradeId: id });
    await appendLog(tx, { kind: 'regrade-agreed', puzzleId, memberId, details: { regrade: id, agreed } });
    return ok(null);
  });
}

/** Drops a regrade, until the moment at which it has been written: every mark stays as it is. */
export function cancelRegrade(word: Word): Promise<Result<null, DecideReason>> {
  return inTransaction(async (tx) => {
    const held = await holdOf(tx, word);
    if (!held.ok) return held;
    const { decidedAt, id } = held.value;
    if (decidedAt !== null) return refuse({ code: 'not-previewed' });
    const { puzzleId, memberId } = word;
    await saveRegradeDecided(tx, id, 'cancelled');
    await appendLog(tx, { kind: 'regrade-cancelled', puzzleId, memberId, details: { regrade: id } });
    return ok(null);
  });
}

async function holdOf(tx: Tx, { puzzleId, regradeId }: Word): Promise<Result<RegradeRecord, DecideReason>> {
  const regrade = await holdRegrade(tx, regradeId);
  return regrade === null || regrade.puzzleId !== puzzleId
    ? refuse({ code: 'unknown-regrade' })
    : ok(regrade);
}
