// "e2 e4 e7 e5", "Rd1 d8": squares in pairs, each pair a move from one to the other. Tried only where the squares
// by themselves give no clean reading.

import { ANY_KIND } from '#lib/rules/moves-to.ts';
import { type Shape, shapeOf } from '../shape.ts';
import type { Item, MoveItem } from './items.ts';

/** Characters between the two squares of a pair: a sign and blanks. */
const FARTHEST = 3;

/** The items with squares joined in pairs; null where the text has none. */
export function pairedItems(items: readonly Item[]): Item[] | null {
  return pairsOfSquares(items) ?? pairsOfMen(items);
}

/** A text of nothing but bare squares, two for each move. */
function pairsOfSquares(items: readonly Item[]): Item[] | null {
  const moves = items.filter((item) => item.type === 'move');
  if (moves.length < 2 || moves.length % 2 === 1 || moves.length !== items.length) return null;
  const joined: Item[] = [];
  for (let at = 0; at < moves.length; at += 2) {
    const [one, two] = [moves[at], moves[at + 1]];
    const from = one?.ways[0]?.[0]?.shapes[0];
    if (one?.isBareSquare !== true || from === undefined) return null;
    const pair = pairOf(one, two, [from], two?.ways[0]?.[0]?.shapes[0]?.promotion == null ? ANY_KIND : 2);
    if (pair === null) return null;
    joined.push(pair);
  }
  return joined;
}

/** "Rd1 d8": a man on his square and a bare square behind a blank. The other moves stay as they are. */
function pairsOfMen(items: readonly Item[]): Item[] | null {
  const joined: Item[] = [];
  for (const item of items) {
    const last = joined[joined.length - 1];
    const shapes =
      last?.type === 'move' && !last.isBareSquare && last.ways.length === 1
        ? last.ways[0]?.[0]?.shapes
        : undefined;
    const isMan = shapes?.every(
      ({ to, promotion, isCapture }) => to >= 0 && promotion === null && !isCapture,
    );
    const pair =
      last?.type === 'move' && item.type === 'move' && shapes !== undefined && isMan === true
        ? pairOf(last, item, shapes, 0)
        : null;
    if (pair === null) joined.push(item);
    else joined[joined.length - 1] = pair;
  }
  return joined.length < items.length ? joined : null;
}

/** The move from where the first shapes go to the bare square; `kinds` in place of theirs unless 0. */
function pairOf(
  one: MoveItem,
  two: MoveItem | undefined,
  origins: readonly Shape[],
  kinds: number,
): MoveItem | null {
  const step = two?.ways[0]?.[0];
  const to = step?.shapes[0];
  if (two === undefined || step === undefined || to === undefined) return null;
  if (!two.isBareSquare || two.start - one.end > FARTHEST || two.number !== null) return null;
  const shapes = origins.map((from) =>
    shapeOf({
      ...to,
      kinds: kinds === 0 ? from.kinds : kinds,
      langs: from.langs,
      fromFiles: from.toFiles,
      fromRanks: from.toRanks,
    }),
  );
  return {
    ...one,
    end: two.end,
    prose: 0,
    isQuestioned: two.isQuestioned,
    ways: [[{ shapes, start: one.start, end: step.end }]],
  };
}
