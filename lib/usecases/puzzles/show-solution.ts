// The solution page's facts, after the reveal and never before: lines, how first moves were spread, the
// roll of solvers, and the book's word on any first move.

import { createBook, type SolutionBook } from '#lib/book/solution-book.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import type { PublicPuzzle } from '#lib/puzzle/public-puzzle.ts';
import { stateAt } from '#lib/puzzle/puzzle-state.ts';
import { mayBeSeen } from '#lib/puzzle/what-may-be-seen.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { bookPosition } from '#lib/rules/position-key.ts';
import { loadProof } from '#lib/store/books.ts';
import { db } from '#lib/store/client.ts';
import { loadPuzzle, loadTerms } from '#lib/store/puzzles.ts';
import { countFirstMoves, loadRoll } from '#lib/store/solution-facts.ts';
import type { Locale } from '#lib/words/locale.ts';
import { loadBook } from '../answers/loaded-book.ts';
import { loadRevisionsHere } from '../answers/seen-revisions.ts';
import { type FirstMove, judgeFirstMove } from './first-moves.ts';
import { publicView } from './show-public-puzzle.ts';
import { type SolutionLine, solutionLines } from './solution-lines.ts';

/** Everything the solution page tells. */
export interface ShownSolution {
  readonly puzzle: PublicPuzzle;
  readonly now: Date;
  /** The published way first, then other ways. */
  readonly lines: readonly SolutionLine[];
  /** First moves that hold, UCI. */
  readonly keys: readonly string[];
  readonly firstMoves: readonly (FirstMove & { readonly count: number })[];
  /** Answers that count, and how many of them have no legal first move. */
  readonly answers: number;
  readonly withoutMove: number;
  readonly solved: number;
  readonly roll: {
    readonly names: readonly string[];
    readonly namedCount: number;
    readonly namelessCount: number;
  };
  /** The first move that was asked about; null where none was, or it is not legal. */
  readonly asked: FirstMove | null;
}

const MOST_NAMES = 1000;

/** The solution of a revealed puzzle; `asks` is a first move that the reader wonders about. */
export async function showSolution(input: {
  readonly slug: string;
  readonly locale: Locale;
  readonly asks: string | null;
}): Promise<Result<ShownSolution, { readonly code: 'unknown-puzzle' }>> {
  const tx = db();
  const record = await loadPuzzle(tx, { slug: input.slug });
  if (record === null || !mayBeSeen('solution', 'public', stateAt(record, record.now))) {
    return refuse({ code: 'unknown-puzzle' });
  }
  const puzzle = await publicView(record, input.locale);
  const start = parseFen(record.terms.fen);
  if (puzzle === null || !start.ok) return refuse({ code: 'unknown-puzzle' });
  const terms = await loadTerms(tx, record);
  const book = (await loadBook(tx, record))?.book ?? createBook([]);
  const movesLeft = record.task.kind === 'mate' ? record.task.moves : null;
  const keys = holdingMoves(book, start.value, movesLeft);
  const proof = await loadProof(tx, record.id, {
    position: bookPosition(start.value),
    movesLeft,
    move: keys[0] ?? '',
  });
  const counts = await countFirstMoves(tx, record.id, await loadRevisionsHere(tx, record));
  const roll = await loadRoll(tx, record.id, MOST_NAMES);
  const judge = (move: string): FirstMove | null =>
    judgeFirstMove(book, { start: start.value, movesLeft, move });
  return ok({
    puzzle,
    now: record.now,
    lines: solutionLines({ start: start.value, published: terms.published, keys, book, movesLeft, proof }),
    keys,
    firstMoves: counts.flatMap(({ move, count }) => {
      const judged = move === null ? null : judge(move);
      return judged === null ? [] : [{ ...judged, count }];
    }),
    answers: counts.reduce((sum, { count }) => sum + count, 0),
    withoutMove: counts.find(({ move }) => move === null)?.count ?? 0,
    solved: roll.namedCount + roll.namelessCount,
    roll,
    asked: input.asks === null ? null : judge(input.asks),
  });
}

// What holds by the book, then what holds by the host's ruling or the benefit of the doubt (rule V8).
function holdingMoves(book: SolutionBook, start: Position, movesLeft: number | null): string[] {
  const rows = book.rowsAt(bookPosition(start), movesLeft);
  const proven = rows.filter((row) => row.verdict === 'holds');
  const ruled = rows.filter((row) => row.verdict === 'unclear' && book.ruling(row)?.verdict === 'holds');
  return [...proven, ...ruled].map((row) => row.move);
}
