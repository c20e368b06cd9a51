// What is the verdict on a solver move where it stands? What the rules of chess settle is settled here
// (mate, stalemate, repetition, the fifty-move rule: rules V1, V5); the rest stands in the book or is lacking.

import type { BookRow, Ruling } from '#lib/book/book-row.ts';
import { countRepetitions, type TreeNode } from '#lib/book/position-tree.ts';
import { verifiedFen } from '#lib/book/question.ts';
import { BENEFIT_OF_DOUBT } from '#lib/book/solution-book.ts';
import type { VerdictWord } from '#lib/engine/verdict.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { MarkedMove } from '../mark.ts';
import { movesLeftAt, type WalkContext } from './walk-context.ts';

/** The verdict, and what the walk needs beside it. */
export interface VerdictAt {
  readonly verdict: VerdictWord;
  readonly mateIn: number | null;
  readonly value: number | null;
  /** The refuting reply; null where none is needed or known. */
  readonly by: Uci | null;
  readonly row: BookRow | null;
  /** The rules of chess end the game with this move, or in a draw task the position is repeated. */
  readonly isOver: boolean;
  /** Settled by the host (rule V8). */
  readonly isRuled: boolean;
  /** So settled because the reveal went on with it unclear. */
  readonly isBenefit: boolean;
}

/** `lacking`: the book has no verdict and it was asked for. `refused`: nor may it be asked for. */
export type VerdictOrLack = VerdictAt | 'lacking' | 'refused';

const SETTLED: VerdictAt = {
  verdict: 'holds',
  mateIn: null,
  value: null,
  by: null,
  row: null,
  isOver: true,
  isRuled: false,
  isBenefit: false,
};
const DRAWN: VerdictAt = { ...SETTLED, verdict: 'slips' };

/** The verdict as a mark keeps it, on the move that was played. */
export function markedMove(uci: Uci, { verdict, mateIn, value, by, isBenefit }: VerdictAt): MarkedMove {
  return isBenefit ? { uci, verdict, mateIn, value, by, isBenefit } : { uci, verdict, mateIn, value, by };
}

/** The verdict on the move that leads from `node` to `next`. */
export function verdictAt(context: WalkContext, node: TreeNode, next: TreeNode): VerdictOrLack {
  const { terms, book } = context.facts;
  const movesLeft = movesLeftAt(terms, node);
  const settled = settledByRules(context, next, movesLeft);
  if (settled !== null) return settled;
  const key = { position: node.bookPosition, movesLeft, move: next.move ?? '' };
  const row = book.find(key);
  if (row === null || row.verdict === 'unclear') {
    const ruling = book.ruling(key);
    if (ruling !== null) return ruledVerdict(ruling, row, movesLeft);
  }
  if (row === null) return ask(context, key);
  return {
    verdict: row.verdict,
    mateIn: row.mateIn,
    value: row.value,
    by: replyAgainst(row),
    row,
    isOver: false,
    isRuled: false,
    isBenefit: false,
  };
}

function settledByRules(context: WalkContext, next: TreeNode, movesLeft: number | null): VerdictAt | null {
  const task = context.facts.terms.task.kind;
  if (next.end === 'checkmate') {
    // One move more than asked: all that is left at zero (rule V1).
    return { ...SETTLED, verdict: movesLeft !== null && movesLeft < 1 ? 'slower' : 'holds', mateIn: 1 };
  }
  if (task === 'mate') {
    if (next.end === 'stalemate' || next.end === 'insufficient') return DRAWN;
    return movesLeft !== null && movesLeft < 1 ? { ...DRAWN, isOver: false } : null;
  }
  const isRepeated = countRepetitions(next) >= (task === 'draw' ? 2 : 3);
  if (next.end === null && !isRepeated) return null;
  return task === 'draw' ? SETTLED : DRAWN;
}

// In a mate task the host's word is that mate follows in the moves left, not how soon.
function ruledVerdict({ verdict, reason }: Ruling, row: BookRow | null, movesLeft: number | null): VerdictAt {
  const isBenefit = reason === BENEFIT_OF_DOUBT;
  const mateIn = verdict === 'holds' ? movesLeft : null;
  const value = row?.value ?? null;
  return { ...SETTLED, verdict, mateIn, row, isOver: false, isRuled: true, isBenefit, value };
}

function replyAgainst({ verdict, evidence }: BookRow): Uci | null {
  if (verdict !== 'slips') return null;
  switch (evidence.kind) {
    case 'refutation':
      return evidence.reply;
    case 'search':
    case 'table':
      return evidence.line[0] ?? null;
    default:
      return null;
  }
}

function ask(
  context: WalkContext,
  key: { readonly position: string; readonly movesLeft: number | null; readonly move: Uci },
): 'lacking' | 'refused' {
  const { allowance, isAsking } = context;
  if (!isAsking) return 'refused';
  const place = `${key.position}|${key.movesLeft}`;
  if (!allowance.positions.has(place) && allowance.positions.size >= allowance.mayAsk) return 'refused';
  allowance.positions.add(place);
  allowance.lacking.set(`${place}|${key.move}`, { ...key, fen: verifiedFen(key.position) });
  return 'lacking';
}
