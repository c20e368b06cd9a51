// One ruling for all texts that were written from the other side of the board (rule R14), earlier and later: each of
// them is read turned by 180 degrees.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { ring } from '#lib/queue/enqueue.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { listDoubtful } from '#lib/store/doubtful.ts';
import { appendLog } from '#lib/store/log.ts';
import { holdMarking } from '#lib/store/puzzle-moments.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { saveReadingRuling } from '#lib/store/rulings.ts';
import { TURNED_TEXTS } from './doubt-key.ts';
import { gradeAgain } from './grade-again.ts';

/** Rules that such boards are turned; gives how many answers waited for it. */
export async function settleTurned(word: {
  readonly puzzleId: number;
  readonly why: string;
  readonly memberId: number;
}): Promise<Result<number, { readonly code: 'unknown-puzzle' } | { readonly code: 'group-empty' }>> {
  const { puzzleId, memberId } = word;
  const settled = await inTransaction(async (tx) => {
    // Marks that are just being written do not know the ruling yet.
    await holdMarking(tx, puzzleId);
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null) return refuse({ code: 'unknown-puzzle' } as const);
    const answers = await listDoubtful(tx, puzzleId, 'turned');
    if (answers.length === 0) return refuse({ code: 'group-empty' } as const);
    const turned = { textHash: TURNED_TEXTS, meant: [], reason: word.why, memberId };
    const ruling = await saveReadingRuling(tx, puzzleId, turned);
    await gradeAgain(tx, puzzle, { answers, reason: word.why, memberId });
    const details = { ruling, of: 'reading', waiting: answers.length } as const;
    await appendLog(tx, { kind: 'ruling-made', puzzleId, memberId, details });
    return ok(answers.length);
  }, 60_000);
  if (settled.ok) await ring(db(), 'mark-answers', { puzzleId });
  return settled;
}
