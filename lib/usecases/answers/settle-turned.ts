// One ruling for all texts that were written from the other side of the board (rule R14): each such
// text is ruled to mean its line turned by 180 degrees.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { ring } from '#lib/queue/enqueue.ts';
import { readText } from '#lib/reading/read-text.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { findAnswer } from '#lib/store/answers.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { listDoubtful } from '#lib/store/doubtful.ts';
import { loadTermsOf } from '#lib/store/former-terms.ts';
import { appendLog } from '#lib/store/log.ts';
import { loadCurrentMark } from '#lib/store/marks.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { saveReadingRuling } from '#lib/store/rulings.ts';
import { textHash } from './doubt-key.ts';
import { gradeAgain } from './grade-again.ts';

/** Rules on every text of the group; gives how many answers were in it. */
export async function settleTurned(word: {
  readonly puzzleId: number;
  readonly why: string;
  readonly memberId: number;
}): Promise<Result<number, { readonly code: 'unknown-puzzle' } | { readonly code: 'group-empty' }>> {
  const { puzzleId, memberId } = word;
  const settled = await inTransaction(async (tx) => {
    const puzzle = await loadPuzzle(tx, { id: puzzleId });
    if (puzzle === null) return refuse({ code: 'unknown-puzzle' } as const);
    const answers = await listDoubtful(tx, puzzleId, 'turned');
    if (answers.length === 0) return refuse({ code: 'group-empty' } as const);
    const ruled = new Set<string>();
    let ruling = 0;
    for (const id of answers) {
      const answer = await findAnswer(tx, id);
      const mark = answer === null ? null : await loadCurrentMark(tx, id);
      if (answer === null || mark === null) continue;
      const position = parseFen((await loadTermsOf(tx, puzzle, mark.revision)).fen);
      const line = position.ok
        ? readText({ position: position.value, text: answer.text }).turned[0]?.line
        : null;
      if (!line) continue;
      const hash = textHash(answer.text);
      if (ruled.has(hash)) continue;
      ruled.add(hash);
      const meant = line.map((move) => move.uci);
      ruling = await saveReadingRuling(tx, puzzleId, { textHash: hash, meant, reason: word.why, memberId });
    }
    await gradeAgain(tx, puzzle, { answers, reason: word.why, memberId });
    const details = { ruling, of: 'reading', waiting: answers.length } as const;
    await appendLog(tx, { kind: 'ruling-made', puzzleId, memberId, details });
    return ok(answers.length);
  }, 60_000);
  if (settled.ok) await ring(db(), 'mark-answers', { puzzleId });
  return settled;
}
