// A viewer takes the answer back: name, text and what was written about it are erased, a nameless stub keeps the counts honest.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { isToken, receiptHash } from '#lib/machine/tokens.ts';
import { eraseAnswers, findByReceipt } from '#lib/store/answers.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { eraseMarkWords } from '#lib/store/marks.ts';
import { eraseLookWords } from '#lib/store/second-looks.ts';
import { eraseNameWithoutAnswers, lockSolver } from '#lib/store/solvers.ts';

/** Why nothing was withdrawn. An unknown token and an ill-formed one look alike. */
export type WithdrawReason = { readonly code: 'unknown-receipt' };

/**
 * Withdraws everything the receipt's solver has sent for its puzzle, so that no older answer takes
 * the place of the withdrawn one. Doing it twice changes nothing. Gives how many answers it was.
 */
export async function withdrawAnswer(input: {
  readonly token: string;
}): Promise<Result<{ withdrawn: number }, WithdrawReason>> {
  if (!isToken(input.token)) return refuse({ code: 'unknown-receipt' });
  return inTransaction(async (tx) => {
    const answer = await findByReceipt(tx, receiptHash(input.token));
    if (answer === null) return refuse({ code: 'unknown-receipt' });
    await lockSolver(tx, answer.solverId);
    const erased = await eraseAnswers(tx, answer.puzzleId, answer.solverId);
    await eraseLookWords(tx, erased);
    await eraseMarkWords(tx, erased);
    await eraseNameWithoutAnswers(tx, answer.solverId);
    if (erased.length > 0)
      await appendLog(tx, {
        kind: 'answers-withdrawn',
        puzzleId: answer.puzzleId,
        details: { solver: answer.solverId, answers: erased },
      });
    return ok({ withdrawn: erased.length });
  });
}
