// Is a verdict of value to be looked at again? Rule V2: along a line of holding moves, where no move of the
// position reaches the bound, its best is searched with double budget; if it still misses, moves near it are
// unclear, never slips. Rule V0: whether that is so is asked of all moves of the position, so that a verdict is
// the same whichever are asked for with it.

import { legalMoves } from '#lib/rules/legal-moves.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { type DepthResult, searchPosition } from '../search-position.ts';
import type { MoveVerdict } from '../verdict.ts';
import { isSettled, type ValueClaim } from './bounds.ts';
import { type Found, lookAtMove, type ValueQuestion, verdictFrom } from './value-verdict.ts';

/** A move within so many centipawns of the best is unclear where even the best misses the bound (rule V2). */
const NEAR_BEST = 50;
/** The same in the puzzle's own position, of which the host says that something holds: the engine contradicts the host. */
const NEAR_BEST_AT_START = 300;

/** How the position stands: some move holds, or its best does with double budget, or that misses the bound all the same. */
export type Outlook =
  | { readonly kind: 'holds' }
  | { readonly kind: 'holds-at-second-look'; readonly best: string; readonly found: Found }
  | { readonly kind: 'misses'; readonly bar: number };

function isClearlyWon(depths: readonly DepthResult[], claim: ValueClaim, budgetNodes: number): boolean {
  // Bounds are told from the solver's side with the opponent to move: here the solver is.
  const turned = depths.map((one) => ({ ...one, value: 0 - one.value }));
  return (depths.at(-1)?.value ?? 0) >= claim.holdBound && isSettled(turned, claim, budgetNodes);
}

/** The move that one search likes best, which ends early where the position is clear; null where there was no time for one ply. */
function bestMove({ engine, position, claim, budgetNodes, tables }: ValueQuestion) {
  const { depths, wasStopped } = searchPosition(engine, {
    position,
    budgetNodes,
    isEnough: (found) => isClearlyWon(found, claim, budgetNodes),
    shouldStop: tables.work.shouldStop,
  });
  return { wasStopped, uci: depths.at(-1)?.line[0] ?? null };
}

/**
 * How the position stands, where none of the `known` moves holds; null where stopped. Costs a search of the
 * position and, until one holds, of every move that is not known, the best first; then the second look.
 */
export function lookAhead(
  question: ValueQuestion,
  { isStart, known }: { readonly isStart: boolean; readonly known: readonly MoveVerdict[] },
): Outlook | null {
  const { wasStopped, uci } = bestMove(question);
  if (wasStopped) return null;
  const moves = legalMoves(question.position).sort((a, b) =>
    isBefore(writeUci(a), writeUci(b), uci) ? -1 : 1,
  );
  for (const move of moves) {
    if (known.some((one) => one.move === writeUci(move))) continue;
    const first = lookAtMove(question, move, question.budgetNodes);
    if (first === null) return null;
    if (first.word === 'holds') return { kind: 'holds' };
  }
  const [best] = moves;
  // No time for one ply of the position: then there was none for its moves either.
  if (best === undefined || uci === null) return { kind: 'holds' };
  const found = lookAtMove(question, best, 2 * question.budgetNodes);
  if (found === null) return null;
  if (found.word === 'holds') return { kind: 'holds-at-second-look', best: uci, found };
  return { kind: 'misses', bar: worthOf(found) - (isStart ? NEAR_BEST_AT_START : NEAR_BEST) };
}

function isBefore(one: string, other: string, first: string | null): boolean {
  return one === first || (other !== first && one < other);
}

/** The value of a move that does not hold: exact results stand where they belong. */
function worthOf({ value, exact }: Found): number {
  if (exact !== null) return exact.result === 'drawn' ? 0 : -10_000;
  return value ?? -10_000;
}

/** The verdict after the second look; null where stopped. */
export function settle(question: ValueQuestion, verdict: MoveVerdict, outlook: Outlook): MoveVerdict | null {
  switch (outlook.kind) {
    case 'holds':
      return verdict;
    case 'holds-at-second-look': {
      if (verdict.move !== outlook.best) return verdict;
      const move = legalMoves(question.position).find((one) => writeUci(one) === verdict.move);
      return move === undefined ? verdict : verdictFrom(question, move, outlook.found);
    }
    case 'misses': {
      const isNear = verdict.verdict === 'slips' && (verdict.value ?? -10_000) >= outlook.bar;
      return isNear ? { ...verdict, verdict: 'unclear' } : verdict;
    }
  }
}
