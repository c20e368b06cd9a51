// A viewer asks, once and after the reveal, that a person look at a mark again (rule A2). Before the
// reveal every receipt is told the same, whatever its mark (rule T2).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { parseShortText, REMARK_CHARACTERS, type ShortTextReason } from '#lib/kit/short-text.ts';
import { isToken, receiptHash } from '#lib/machine/tokens.ts';
import { stateAt } from '#lib/puzzle/puzzle-state.ts';
import { mayBeSeen } from '#lib/puzzle/what-may-be-seen.ts';
import { findByReceipt } from '#lib/store/answers.ts';
import { inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { loadCurrentMark } from '#lib/store/marks.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { appendLook } from '#lib/store/second-looks.ts';
import { lockSolver } from '#lib/store/solvers.ts';

/** Why no look was asked for. An unknown token and an ill-formed one look alike. */
export type AskLookReason =
  | { readonly code: 'unknown-receipt' }
  | { readonly code: 'before-reveal' }
  | { readonly code: 'withdrawn' }
  | { readonly code: 'not-marked' }
  | { readonly code: 'asked-already' }
  | ShortTextReason;

/** Asks for a second look at the answer that the receipt stands for; `words` may be empty. */
export async function askSecondLook(input: {
  readonly token: string;
  readonly words: string;
}): Promise<Result<null, AskLookReason>> {
  if (!isToken(input.token)) return refuse({ code: 'unknown-receipt' });
  return inTransaction(async (tx): Promise<Result<null, AskLookReason>> => {
    const hash = receiptHash(input.token);
    const found = await findByReceipt(tx, hash);
    if (found === null) return refuse({ code: 'unknown-receipt' });
    // A withdrawal holds the solver too: what is read from here on stays true until the commit.
    await lockSolver(tx, found.solverId);
    const answer = (await findByReceipt(tx, hash)) ?? found;
    const puzzle = await loadPuzzle(tx, { id: answer.puzzleId });
    if (puzzle === null) return refuse({ code: 'unknown-receipt' });
    if (!mayBeSeen('own-mark', 'solver', stateAt(puzzle, puzzle.now)))
      return refuse({ code: 'before-reveal' });
    if (answer.withdrawnAt !== null) return refuse({ code: 'withdrawn' });
    if ((await loadCurrentMark(tx, answer.id)) === null) return refuse({ code: 'not-marked' });
    const words = parseShortText(input.words, REMARK_CHARACTERS);
    if (!words.ok) return words;
    const { id: answerId, puzzleId } = answer;
    const look = await appendLook(tx, { answerId, puzzleId, words: words.value });
    if (look === null) return refuse({ code: 'asked-already' });
    const details = { look, characters: [...words.value].length };
    await appendLog(tx, { kind: 'look-asked', puzzleId, answerId, details });
    return ok(null);
  });
}
