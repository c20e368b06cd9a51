// "1.f3 e5 2.g4 Qh4#", "22...Ne6? 23.Rxe6!": some viewers write the whole game, or its last move. Which tokens
// only lead to the puzzle's position?

import { parseFen } from '#lib/rules/parse-fen.ts';
import { type Position, sideOf } from '#lib/rules/position.ts';
import type { Shape } from '../shape.ts';
import type { Item } from './items.ts';
import { type Budget, childOf, landings, type Node, PLAIN, rootOf } from './node.ts';

const START = parseFen('rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1');
/** Longest game that is followed, in plies. */
const LONGEST = 60;

/** The items behind the moves that reach the puzzle's position from the starting array; null where they do not. */
export function withoutHistory(
  items: readonly Item[],
  position: Position,
  budget: Budget,
): readonly Item[] | null {
  if (!START.ok) return null;
  let node: Node = rootOf(START.value);
  for (let at = 0; at < items.length && at < LONGEST; at += 1) {
    const item = items[at];
    if (item?.type !== 'move') return null;
    const shapes = item.ways[0]?.[0]?.shapes ?? [];
    const found = landings(node, shapes, budget).filter(({ match }) => match.cost === 0);
    const [landing] = found;
    if (landing === undefined || found.length > 1) return null;
    node = childOf(node, landing, {
      start: item.start,
      end: item.end,
      isTypo: false,
      ...PLAIN,
      followsGap: false,
    });
    if (isSameBoard(node.positions[0], position)) return items.slice(at + 1);
  }
  return null;
}

/**
 * The items behind the game's last move, where the text begins with it: a move of the defender's by its number
 * ("22...Ne6"), or by words ("after Ne6"), whose man stands on its goal. Null where it does not begin so.
 */
export function withoutLastMove(
  items: readonly Item[],
  position: Position,
  budget: Budget,
): readonly Item[] | null {
  const at = items.findIndex(({ type }) => type === 'move');
  const [first, second] = [items[at], items[at + 1]];
  if (first?.type !== 'move' || second?.type !== 'move') return null;
  const isBlack = first.dots > 1;
  const isOthersNumber = first.number !== null && isBlack === (position.turn === 'w');
  const isTold = first.cues.has('branch') || first.isQuestioned;
  if (!isOthersNumber && !isTold) return null;
  const shapes = first.ways[0]?.[0]?.shapes ?? [];
  const told = shapes.filter((shape) => stoodThere(position, shape));
  // In the language in which it stands there the solver must not be able to play it.
  const langs = told.reduce((mask, shape) => mask | shape.langs, 0);
  const found = told.length === 0 ? [] : landings(rootOf(position), shapes, budget);
  const isPlayable = found.some(({ match }) => (match.langs & langs) !== 0);
  return told.length > 0 && !isPlayable ? items.slice(at + 1) : null;
}

function stoodThere({ board, turn }: Position, { to, kinds, castle }: Shape): boolean {
  const man = to < 0 || castle !== null ? 0 : (board[to] ?? 0);
  return man !== 0 && sideOf(man) !== turn && ((kinds >> (man & 7)) & 1) === 1;
}

function isSameBoard(one: Position | undefined, two: Position): boolean {
  if (one === undefined || one.turn !== two.turn) return false;
  return one.board.every((man, square) => man === two.board[square]);
}
