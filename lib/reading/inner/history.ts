// "1.f3 e5 2.g4 Qh4#": some viewers write the whole game. Which tokens only lead from the starting array to
// the puzzle's position?

import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import type { Item } from './items.ts';
import { type Budget, childOf, landings, type Node, rootOf } from './node.ts';

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
      isQuestioned: false,
      isExclaimed: false,
      isThreat: false,
      followsGap: false,
    });
    if (isSameBoard(node.positions[0], position)) return items.slice(at + 1);
  }
  return null;
}

function isSameBoard(one: Position | undefined, two: Position): boolean {
  if (one === undefined || one.turn !== two.turn) return false;
  return one.board.every((man, square) => man === two.board[square]);
}
