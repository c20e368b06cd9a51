// The ledger of a mark: every move of the line that was taken, with its verdict, and the position that
// tells the story: after the slip with the reply that punishes it, else where the line ends.

import type { MarkedMove, Outcome } from '#lib/marking/mark.ts';
import type { ReadLine } from '#lib/reading/reading.ts';
import type { Uci } from '#lib/rules/move.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { findUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';

/** One move of the line. */
export interface LedgerRow {
  readonly uci: Uci;
  readonly by: 'solver' | 'defender';
  /** FEN before the move, from which it can be written in any notation. */
  readonly fen: string;
  /** False for a reply that was not written and was filled in (rule O3). */
  readonly isWritten: boolean;
  /** Of a solver's move; null for replies and where the book has none. */
  readonly verdict: MarkedMove['verdict'] | null;
  readonly mateIn: number | null;
  /** Counts as holding because it was left unclear at the reveal (rule V8). */
  readonly isBenefit: boolean;
}

/** Ledger and diagram of a mark. */
export interface Ledger {
  readonly rows: readonly LedgerRow[];
  readonly fen: string;
  readonly lastMove: Uci | null;
}

/** What the ledger is made from. */
export interface LedgerInput {
  readonly start: Position;
  readonly outcome: Outcome;
  readonly atMove: number | null;
  readonly line: readonly Uci[];
  readonly reading: ReadLine | null;
  readonly verdicts: readonly MarkedMove[];
}

/** Builds the ledger; it ends before the first move that cannot be played. */
export function buildLedger(input: LedgerInput): Ledger {
  const written = [...(input.reading ?? [])];
  const rows: LedgerRow[] = [];
  let position = input.start;
  let story: { position: Position; lastMove: Uci | null } = { position, lastMove: null };
  for (const [ply, uci] of input.line.entries()) {
    const move = findUci(position, uci);
    if (move === null) break;
    const by = ply % 2 === 0 ? 'solver' : 'defender';
    const isWritten = written[0]?.uci === uci && written[0].by === by;
    if (isWritten) written.shift();
    const marked = by === 'solver' ? input.verdicts[ply / 2] : undefined;
    const known = marked?.uci === uci ? marked : undefined;
    rows.push({
      uci,
      by,
      fen: writeFen(position),
      isWritten,
      verdict: known?.verdict ?? null,
      mateIn: known?.mateIn ?? null,
      isBenefit: known?.isBenefit === true,
    });
    position = playMove(position, move);
    story = { position, lastMove: uci };
    if (isSlip(input, ply)) return { rows, fen: writeFen(position), lastMove: known?.by ?? uci };
  }
  return { rows, fen: writeFen(story.position), lastMove: story.lastMove };
}

// The rest of a line that has slipped earns and costs nothing, and would bury the reason.
function isSlip({ outcome, atMove }: LedgerInput, ply: number): boolean {
  const isSlipping = outcome === 'slipped' || outcome === 'wrong';
  return isSlipping && ply === 2 * ((atMove ?? 1) - 1);
}
