// When is a value good enough for a verdict? Rules V2 and V3, and what is spent on a clear one.

import type { DepthResult } from '../search-position.ts';
import type { Claim, VerdictWord } from '../verdict.ts';
import { MATE_FROM } from './search-calls.ts';

/** The claim of a win or draw task. */
export type ValueClaim = Extract<Claim, { task: 'win' | 'draw' }>;

/** No value is shown larger than this: the engine does not know better. */
const MOST_VALUE = 5000;

/** A value so far beyond a bound, at so many depths in a row and at this share of the budget, is settled. */
const CLEAR_BY = 300;
const CLEAR_DEPTHS = 4;
const CLEAR_HOLD_SHARE = 8;
/** A larger share before a move is given up: an offer may look lost for long. */
const CLEAR_SLIP_SHARE = 4;

/** A value from the opponent, who is to move, as the solver's. Mates that nobody proved are only large values. */
export function solverValue(value: number): number {
  return Math.max(-MOST_VALUE, Math.min(MOST_VALUE, 0 - value));
}

/** The verdict that the last two completed depths give, or null where they disagree or lie between the bounds. */
export function wordFor(depths: readonly DepthResult[], claim: ValueClaim): VerdictWord | null {
  const last = depths.slice(-2).map(({ value }) => solverValue(value));
  if (last.length < 2) return null;
  if (last.every((value) => value >= claim.holdBound)) return 'holds';
  return last.every((value) => value <= claim.slipBound) ? 'slips' : null;
}

/**
 * May a search end before its budget does? Where a mate was found twice; and where four depths in a
 * row lie 300 beyond the same bound, after an eighth of the budget above it, a quarter below.
 */
export function isSettled(depths: readonly DepthResult[], claim: ValueClaim, budgetNodes: number): boolean {
  const last = depths.slice(-2);
  const areMates = last.length === 2 && last.every(({ value }) => Math.abs(value) >= MATE_FROM);
  if (areMates && last.every(({ value }) => value > 0 === (last[0]?.value ?? 0) > 0)) return true;
  const row = depths.slice(-CLEAR_DEPTHS);
  if (row.length < CLEAR_DEPTHS) return false;
  const share = (row.at(-1)?.nodes ?? 0) / budgetNodes;
  const values = row.map(({ value }) => solverValue(value));
  const isAbove = values.every((value) => value >= claim.holdBound + CLEAR_BY);
  const isBelow = values.every((value) => value <= claim.slipBound - CLEAR_BY);
  return (isAbove && share >= 1 / CLEAR_HOLD_SHARE) || (isBelow && share >= 1 / CLEAR_SLIP_SHARE);
}
