// What does the book say of a first move? The answer to *Why not?*, as data.

import { BENEFIT_OF_DOUBT, type SolutionBook } from '#lib/book/solution-book.ts';
import type { VerdictWord } from '#lib/engine/verdict.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { Position } from '#lib/rules/position.ts';
import { bookPosition } from '#lib/rules/position-key.ts';
import { findUci } from '#lib/rules/uci.ts';

/** A first move with the book's word on it. */
export interface FirstMove {
  readonly move: Uci;
  /** `unknown`: the book has no verdict on it yet. */
  readonly verdict: VerdictWord | 'unknown';
  readonly mateIn: number | null;
  /** Counts as holding because it was left unclear at the reveal (rule V8). */
  readonly isBenefit: boolean;
  /** The reply that defeats it; null where none is needed or known. */
  readonly reply: Uci | null;
  /** How it goes on, from the position after the move: the reply first where there is one. */
  readonly line: readonly Uci[];
}

/** The book's word on a legal first move; null for a move that cannot be played. */
export function judgeFirstMove(
  book: SolutionBook,
  asked: { readonly start: Position; readonly movesLeft: number | null; readonly move: string },
): FirstMove | null {
  const { start, movesLeft, move } = asked;
  if (findUci(start, move) === null) return null;
  const key = { position: bookPosition(start), movesLeft, move };
  const row = book.find(key);
  const ruling = book.ruling(key);
  const verdict = ruling?.verdict ?? row?.verdict ?? 'unknown';
  const isBenefit = ruling?.reason === BENEFIT_OF_DOUBT;
  const nothing: FirstMove = {
    move,
    verdict,
    mateIn: row?.mateIn ?? null,
    isBenefit,
    reply: null,
    line: [],
  };
  switch (row?.evidence.kind) {
    case 'refutation': {
      const { reply, line } = row.evidence;
      return { ...nothing, reply, line: line.length > 0 || reply === null ? line : [reply] };
    }
    case 'search':
    case 'table':
      return { ...nothing, reply: row.evidence.line[0] ?? null, line: row.evidence.line };
    default:
      return nothing;
  }
}
