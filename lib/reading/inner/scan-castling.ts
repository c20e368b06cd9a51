// Is castling written here in signs: O-O, 0-0, o-o-o, OO, with any dash and any O, or in a word with its wing?

import { type Shape, shapeOf } from '../shape.ts';
import { isWordAt } from './signs.ts';

const ROUND = new Set([...'0OoОоΟο〇']);

/** Castling in signs: how many O's, and whether dashes make it sure. */
export interface CastlingScan {
  readonly end: number;
  readonly shape: Shape;
  readonly isSure: boolean;
}

/** The castling sign at `at`, or null. Four O's are a move that does not exist. */
export function scanCastling(text: string, at: number): CastlingScan | null {
  const sign = text.charAt(at);
  if (sign === 'C' || sign === 'c') return castlingWithWing(text, at);
  if (text.startsWith('易位', at + 1) && '长長短'.includes(sign))
    return { end: at + 3, shape: shapeOf({ castle: sign === '短' ? 'short' : 'long' }), isSure: true };
  if (!ROUND.has(sign)) return null;
  let count = 1;
  let dashes = 0;
  let end = at + 1;
  while (count < 6) {
    let next = end;
    while (next < end + 2 && text.charAt(next) === ' ') next += 1;
    const hasDash = text.charAt(next) === '-';
    if (hasDash) {
      next += 1;
      if (text.charAt(next) === ' ') next += 1;
    } else next = end;
    if (!ROUND.has(text.charAt(next))) break;
    if (hasDash) dashes += 1;
    count += 1;
    end = next + 1;
  }
  if (count < 2 || (dashes !== 0 && dashes !== count - 1)) return null;
  if (isWordAt(text, end) && !/^(?:mate|ch|check|[KQRBN]?[a-h]?x?[a-h][1-8])/.test(text.slice(end, end + 6)))
    return null;
  // "oo", "ooo" are cries of wonder; "00" and "OO" are castling, if it is legal.
  if (dashes === 0 && text.slice(at, end) === 'o'.repeat(count)) return null;
  if (dashes === 0 && count > 3) return null;
  const castle = count === 2 ? 'short' : 'long';
  const shape = count > 3 ? shapeOf({ toFiles: 0 }) : shapeOf({ castle });
  return { end, shape, isSure: dashes > 0 };
}

/** "Castles (Q)", "castles KR": the word with the wing by its man. */
function castlingWithWing(text: string, at: number): CastlingScan | null {
  const match = /^castles? (?:\(([KQ])R?\)|([KQ])R?(?![\p{L}\d]))/iu.exec(text.slice(at, at + 14));
  if (match === null) return null;
  const castle = (match[1] ?? match[2])?.toUpperCase() === 'Q' ? 'long' : 'short';
  return { end: at + match[0].length, shape: shapeOf({ castle }), isSure: true };
}
