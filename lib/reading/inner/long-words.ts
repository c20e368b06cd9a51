// "Qb3 to b8": a written man on his square, a word that leads on, and a goal. Rule R2: one move from square to
// square, or two moves where only these are legal.

import { shapeOf } from '../shape.ts';
import type { Lexeme, MoveLexeme } from './lexemes.ts';
import { senseIn } from './word-table.ts';

/** The one move at `at` and the first lexeme behind it; null where nothing of the kind is written. */
export function wordedLongMove(
  lexemes: readonly Lexeme[],
  at: number,
): { readonly lexeme: MoveLexeme; readonly end: number } | null {
  const [one, word, two] = [lexemes[at], lexemes[at + 1], lexemes[at + 2]];
  if (one?.type !== 'move' || one.isBareSquare || two?.type !== 'move' || !two.isBareSquare) return null;
  if (word?.type !== 'word' || senseIn(word.word, 'to') === null || one.ways.length > 1) return null;
  const [first, second] = [one.ways[0]?.[0], two.ways[0]?.[0]];
  const goal = second?.shapes[0];
  if (first === undefined || second === undefined || goal === undefined) return null;
  if (first.shapes.some(({ to, isCapture, promotion }) => to < 0 || isCapture || promotion !== null))
    return null;
  const shapes = first.shapes.map(({ kinds, langs, cost, toFiles, toRanks }) =>
    shapeOf({
      kinds,
      langs,
      cost,
      fromFiles: toFiles,
      fromRanks: toRanks,
      toFiles: goal.toFiles,
      toRanks: goal.toRanks,
    }),
  );
  const whole = { shapes, start: one.start, end: second.end };
  return {
    lexeme: {
      ...two,
      start: one.start,
      ways: [[whole], [first, second]],
      strength: 'strong',
      isBareSquare: false,
    },
    end: at + 3,
  };
}
