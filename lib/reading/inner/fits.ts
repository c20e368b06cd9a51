// How well does a token fit a place: its language, its number, the side it is said to be? Rule R11: none of
// these forbids a move, they only order the ways to read it.

import type { Shape } from '../shape.ts';
import { COST, RARITY_COST } from './costs.ts';
import type { MoveItem } from './items.ts';
import { rarityOf } from './letters.ts';
import { type Landing, type Node, turnAt } from './node.ts';
import type { Step } from './scan-compact.ts';
import type { State } from './state.ts';

/** A letter that the text's language has keeps its meaning there; only foreign letters mean more. */
export function inLanguage(shapes: readonly Shape[], langs: number): readonly Shape[] {
  if (langs === -1 || shapes.length < 2) return shapes;
  const own = shapes.filter((shape) => (shape.langs & langs) !== 0);
  return own.some((shape) => shape.langs !== -1) ? own : shapes;
}

/** The number before the token belongs to a later move of the solver than the one just read. */
export function isSolversNumber(state: State, item: MoveItem, node: Node): boolean {
  if (item.number === null || state.numberOffset === null || item.dots > 1) return false;
  return item.number === node.solverMoves + 1 + state.numberOffset;
}

/** The written number is that of the place, and the cursor stands further on. */
export function isNumberFor(state: State, item: MoveItem, child: Node): boolean {
  if (item.number === null || state.numberOffset === null) return false;
  const due = item.number - state.numberOffset;
  const { cursor } = state;
  const goingOn = cursor.solverMoves + (cursor.by === 'defender' ? 1 : 0);
  return due === child.solverMoves && due !== goingOn && cursor.written >= child.written;
}

/** How the written number fits, and the offset that it fixes. */
export function numberOf(
  state: State,
  item: MoveItem,
  child: Node,
): { readonly offset: number | null; readonly cost: number } {
  if (item.number === null) return { offset: state.numberOffset, cost: 0 };
  const offset = item.number - child.solverMoves;
  // The first number may be the game's, so it is never too high; too low, it counts from the start anew.
  if (state.numberOffset === null) return { offset, cost: offset < 0 ? COST.number : 0 };
  // A game counts Black's solver and White's next move differently from a problem: both are usual.
  const isBlackSolver = (child.by === 'solver') === (turnAt(child) === 'w');
  const isFitting =
    offset === state.numberOffset ||
    (isBlackSolver && child.by === 'defender' && offset === state.numberOffset + 1);
  return { offset: state.numberOffset, cost: isFitting ? 0 : COST.number };
}

export function sideCost(item: MoveItem, node: Node, followsGap: boolean): number {
  const isBlack = (turnAt(node) === 'b') !== followsGap;
  if (item.cues.has('white') && !item.cues.has('black') && isBlack) return COST.side;
  if (item.cues.has('black') && !item.cues.has('white') && !isBlack) return COST.side;
  return item.dots > 1 && item.number !== null && !isBlack ? COST.side : 0;
}

export function languageAfter(
  langs: number,
  landing: Landing,
  step: Step | undefined,
): { readonly langs: number; readonly cost: number } | null {
  const both = langs & landing.match.langs;
  if (both !== 0) return { langs: both, cost: 0 };
  // A letter that the text's language has keeps its meaning there: only foreign letters change the language.
  const said = (step?.shapes ?? []).reduce(
    (mask, shape) => (shape.langs === -1 ? mask : mask | shape.langs),
    0,
  );
  if ((said & langs) !== 0) return null;
  // What the language left behind is worth stays counted.
  const cost = COST.languageChange + (RARITY_COST[rarityOf(langs)] ?? 0);
  return { langs: landing.match.langs, cost };
}
