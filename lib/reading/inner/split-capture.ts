// "King takes rook h1": one capture, or "king takes" and a new move "rook h1"? Rule R2: both ways are tried.

import { shapeOf } from '../shape.ts';
import type { Lexeme } from './lexemes.ts';
import type { Step } from './scan-compact.ts';
import { senseIn } from './word-table.ts';

/** The two moves of a man, "takes", a man and a square, where the phrase is no more; null for other phrases. */
export function splitCapture(lexemes: readonly Lexeme[], start: number, end: number): readonly Step[] | null {
  const first = lexemes[start];
  const from = first?.type === 'word' && senseIn(first.word, 'check') !== null ? start + 1 : start;
  const [mover, verb, second, ...rest] = lexemes.slice(from, end);
  const square = rest.pop();
  // "Takes the rook on h3", "takes; rook to h3": one preposition at most.
  if (rest.length > 1 || !rest.every(isPreposition)) return null;
  if (mover?.type !== 'word' || verb?.type !== 'word' || second?.type !== 'word') return null;
  if (square?.type !== 'move' || !square.isBareSquare || senseIn(verb.word, 'take') === null) return null;
  const taker = senseIn(mover.word, 'piece');
  const next = senseIn(second.word, 'piece');
  const goal = square.ways[0]?.[0]?.shapes[0];
  if (taker === null || next === null || goal === undefined) return null;
  // A liberty beside the whole phrase as one capture.
  const takes = shapeOf({ kinds: taker.kinds, isCapture: true, isRecapture: true, cost: 1 });
  const goes = shapeOf({ kinds: next.kinds, toFiles: goal.toFiles, toRanks: goal.toRanks });
  return [
    { shapes: [takes], start: mover.start, end: verb.end },
    { shapes: [goes], start: second.start, end: square.end },
  ];
}

function isPreposition(lexeme: Lexeme): boolean {
  return (
    lexeme.type === 'word' && (senseIn(lexeme.word, 'to') !== null || senseIn(lexeme.word, 'on') !== null)
  );
}
