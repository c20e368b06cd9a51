// Texts whose every move is told and none is an answer: a position copied out ("White: Kg1, Re1; Black: Kg8"), or
// a defence held against somebody else's answer ("@Tom what about Kf8?").

import type { Position } from '#lib/rules/position.ts';
import { namesStandingMan } from './history.ts';
import type { Item, MoveItem } from './items.ts';
import { type Budget, landingsAfterGap, rootOf } from './node.ts';

/** Moves looked at. */
const MOST = 40;

function movesOf(items: readonly Item[]): MoveItem[] {
  return items.filter((item) => item.type === 'move').slice(0, MOST);
}

/** Two men at least are named, and each stands where it is said to. */
export function isPlacement(items: readonly Item[], position: Position): boolean {
  const moves = movesOf(items).filter(({ prose, isMalformed }) => prose < 3 && !isMalformed);
  return moves.length > 1 && moves.every((item) => namesStandingMan(item, position));
}

/** One of the moves is the defender's, after some move of the solver's. */
export function namesDefence(items: readonly Item[], position: Position, budget: Budget): boolean {
  const root = rootOf(position);
  return movesOf(items).some(
    ({ ways }) => budget.left > 0 && landingsAfterGap(root, ways[0]?.[0]?.shapes ?? [], budget).length > 0,
  );
}
