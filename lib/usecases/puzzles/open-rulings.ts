// Which moves are still unclear (rule V8)? What a reveal lists first, and what it gives the benefit of
// the doubt where the host goes on all the same.

import type { BookKey } from '#lib/book/book-row.ts';
import { BENEFIT_OF_DOUBT } from '#lib/book/solution-book.ts';
import { enqueue } from '#lib/queue/enqueue.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { Tx } from '#lib/store/client.ts';
import { listDoubtfulGroups } from '#lib/store/doubtful.ts';
import { loadTermsOf } from '#lib/store/former-terms.ts';
import { appendLog } from '#lib/store/log.ts';
import { dropUnclearMarks, loadCurrentMark } from '#lib/store/marks.ts';
import type { PuzzleRecord } from '#lib/store/puzzles.ts';
import { saveVerdictRuling } from '#lib/store/rulings.ts';
import { claimUnclear } from '#lib/store/work-list.ts';
import { findUnclearMove, unclearKey } from '../answers/doubt-key.ts';
import { loadBook } from '../answers/loaded-book.ts';
import { markWithin } from '../answers/mark-answers.ts';

/** An unclear move that nobody has ruled on. */
export interface OpenRuling {
  /** Key of the group on the list of doubtful answers. */
  readonly doubt: string;
  /** The position that the line begins from. */
  readonly fen: string;
  /** The line of one answer up to the move, the move last. */
  readonly line: readonly Uci[];
  readonly answers: number;
  readonly key: BookKey;
}

/** The open moves, those with most answers first; and how many other groups of answers wait. */
export async function listOpenRulings(
  tx: Tx,
  puzzle: PuzzleRecord,
): Promise<{ open: OpenRuling[]; others: number }> {
  const groups = await listDoubtfulGroups(tx, puzzle.id);
  const open: OpenRuling[] = [];
  for (const { doubt, answers, examples } of groups) {
    if (!doubt.startsWith('verdict ')) continue;
    const mark = await loadCurrentMark(tx, examples[0] ?? 0);
    if (mark === null) continue;
    const terms = await loadTermsOf(tx, puzzle, mark.revision);
    const place = findUnclearMove(terms.fen, mark);
    const key = unclearKey(terms, mark);
    if (place === null || key === null) continue;
    const line = (mark.line ?? []).slice(0, 2 * place.solverMovesBefore + 1);
    open.push({ doubt, fen: terms.fen, line, answers, key });
  }
  return { open, others: groups.length - open.length };
}

const BATCH = 200;
const MOST_ROUNDS = 40;

/**
 * Rules that every open move holds, and marks the answers concerned at once. A line may come to another
 * unclear move behind the first: that one is ruled on as well, round by round. What needs the engine
 * first is without a mark in force until the worker has made one. The caller holds the marking alone. Gives how many moves it were.
 */
export async function giveBenefit(tx: Tx, puzzle: PuzzleRecord, memberId: number | null): Promise<number> {
  const ruled = new Map<string, { ruling: number; waiting: number }>();
  let lacking = 0;
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const { open } = await listOpenRulings(tx, puzzle);
    const fresh = open.filter(({ doubt }) => !ruled.has(doubt));
    if (fresh.length === 0) break;
    for (const { doubt, key, answers: waiting } of fresh) {
      const ruling = { ...key, verdict: 'holds', reason: BENEFIT_OF_DOUBT, memberId } as const;
      ruled.set(doubt, { ruling: await saveVerdictRuling(tx, puzzle.id, ruling), waiting });
    }
    // What was left to the worker is not asked for twice.
    const answers = await claimUnclear(tx, puzzle.id);
    const book = await loadBook(tx, puzzle);
    if (book === null) break;
    for (let at = 0; at < answers.length; at += BATCH) {
      const marked = await markWithin(tx, { puzzle, book, answers: answers.slice(at, at + BATCH) });
      lacking += marked.lacking;
    }
  }
  const puzzleId = puzzle.id;
  if (lacking > 0) {
    await dropUnclearMarks(tx, puzzleId);
    await enqueue(tx, 'extend-book', { puzzleId });
  }
  for (const { ruling, waiting } of ruled.values())
    await appendLog(tx, {
      kind: 'ruling-made',
      puzzleId,
      memberId,
      details: { ruling, of: 'verdict', waiting },
    });
  return ruled.size;
}
