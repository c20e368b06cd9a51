// "e2 e4 e7 e5": squares in pairs, each pair a move. Tried only where the squares alone give no clean reading.

import { ANY_KIND } from '#lib/rules/moves-to.ts';
import { shapeOf } from '../shape.ts';
import type { Item, MoveItem } from './items.ts';

/** The items with bare squares joined in pairs; null where the text is not made of such squares. */
export function pairedItems(items: readonly Item[]): Item[] | null {
  const moves = items.filter((item) => item.type === 'move');
  if (moves.length < 2 || moves.length % 2 === 1 || moves.length !== items.length) return null;
  const joined: Item[] = [];
  for (let at = 0; at < moves.length; at += 2) {
    const pair = pairOf(moves[at], moves[at + 1]);
    if (pair === null) return null;
    joined.push(pair);
  }
  return joined;
}

function pairOf(one: MoveItem | undefined, two: MoveItem | undefined): MoveItem | null {
  const from = one?.ways[0]?.[0]?.shapes[0];
  const step = two?.ways[0]?.[0];
  const to = step?.shapes[0];
  if (one === undefined || two === undefined || from === undefined || step === undefined || to === undefined)
    return null;
  if (!one.isBareSquare || !two.isBareSquare || two.start - one.end > 3 || two.number !== null) return null;
  const { toFiles: fromFiles, toRanks: fromRanks } = from;
  const shapes = to.promotion === null ? [ANY_KIND] : [2];
  return {
    ...one,
    end: two.end,
    prose: 0,
    isQuestioned: two.isQuestioned,
    ways: [
      [
        {
          shapes: shapes.map((kinds) => shapeOf({ ...to, kinds, fromFiles, fromRanks })),
          start: one.start,
          end: step.end,
        },
      ],
    ],
  };
}
