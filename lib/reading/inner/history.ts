// "1.f3 e5 2.g4 Qh4#", "22...Ne6? 23.Rxe6!": some viewers write the whole game, or its last move. Which tokens
// only lead to the puzzle's position?

import { parseFen } from '#lib/rules/parse-fen.ts';
import { otherSide, type Position, type Side, sideOf } from '#lib/rules/position.ts';
import type { Shape } from '../shape.ts';
import type { Item, MoveItem } from './items.ts';
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

/** Most plies of the game told before the answer. */
const MOST_TOLD = 4;

/**
 * The items behind the game's last moves, where the text begins with them: by their numbers ("22...Ne6"), or the
 * last one by words ("after Ne6"). Their men stand on their goals already. Null where it does not begin so.
 */
export function withoutLastMoves(
  items: readonly Item[],
  position: Position,
  budget: Budget,
): readonly Item[] | null {
  const start = items.findIndex(({ type }) => type === 'move');
  const first = items[start];
  if (first?.type !== 'move') return null;
  const toMove = otherSide(position.turn);
  for (let plies = 1; plies <= MOST_TOLD; plies += 1) {
    const next = items[start + plies];
    if (next?.type !== 'move') return null;
    const side = plies % 2 === 1 ? toMove : position.turn;
    if (!isToldOf(first, next, { plies, side, solver: position.turn })) continue;
    if (isHistory(items.slice(start, start + plies), { position, side, budget })) {
      return items.slice(start + plies);
    }
  }
  return null;
}

/** Do the numbers, or for a single move the words, say that the first token belongs to the game? */
function isToldOf(
  first: MoveItem,
  next: MoveItem,
  { plies, side, solver }: { readonly plies: number; readonly side: Side; readonly solver: Side },
): boolean {
  if (plies > 1) return first.number !== null && next.number !== null && next.number > first.number;
  const isOthersNumber = first.number !== null && first.dots > 1 === (solver === 'w') && side !== solver;
  return isOthersNumber || first.cues.has('branch') || first.cues.has('played') || first.isQuestioned;
}

/** All men named stand on their goals, and the solver cannot play the first in the language in which it stands there. */
function isHistory(
  told: readonly Item[],
  { position, side, budget }: { readonly position: Position; readonly side: Side; readonly budget: Budget },
): boolean {
  let mover = side;
  for (const item of told) {
    const shapes = item.type === 'move' ? (item.ways[0]?.[0]?.shapes ?? []) : [];
    const standing = shapes.filter((shape) => stoodThere(position, shape, mover));
    if (standing.length === 0) return false;
    const langs = standing.reduce((mask, shape) => mask | shape.langs, 0);
    const found = item === told[0] ? landings(rootOf(position), shapes, budget) : [];
    if (found.some(({ match }) => (match.langs & langs) !== 0)) return false;
    mover = otherSide(mover);
  }
  return true;
}

/** Does the token name a man by the square on which he stands, with nothing taken? */
export function namesStandingMan({ ways }: MoveItem, position: Position): boolean {
  const shapes = ways[0]?.[0]?.shapes ?? [];
  return shapes.some(
    (shape) => !shape.isCapture && (stoodThere(position, shape, 'w') || stoodThere(position, shape, 'b')),
  );
}

function stoodThere({ board }: Position, { to, kinds, castle }: Shape, side: Side): boolean {
  const man = to < 0 || castle !== null ? 0 : (board[to] ?? 0);
  return man !== 0 && sideOf(man) === side && ((kinds >> (man & 7)) & 1) === 1;
}

function isSameBoard(one: Position | undefined, two: Position): boolean {
  if (one === undefined || one.turn !== two.turn) return false;
  return one.board.every((man, square) => man === two.board[square]);
}
