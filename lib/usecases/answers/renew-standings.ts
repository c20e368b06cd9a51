// Decides anew which answers of these solvers count, and saves what has changed. Within the caller's
// transaction, which holds the solvers.

import { pickMarkedAnswers } from '#lib/marking/pick-marked-answer.ts';
import type { Tx } from '#lib/store/client.ts';
import { listCandidates, saveStandings } from '#lib/store/standing-of-answers.ts';

/** Renews the standings of the solvers' answers to the puzzle. */
export async function renewStandings(
  tx: Tx,
  puzzle: { readonly id: number; readonly countsFirst: boolean },
  solverIds: readonly number[],
): Promise<void> {
  const candidates = await listCandidates(tx, puzzle.id, solverIds);
  const former = new Map(candidates.map((one) => [one.id, one.standing]));
  const decided = pickMarkedAnswers(candidates, { countsFirst: puzzle.countsFirst });
  await saveStandings(
    tx,
    decided.filter((one) => former.get(one.id) !== one.standing),
  );
}
