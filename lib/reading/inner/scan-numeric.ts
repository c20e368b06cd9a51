// Is a whole text written in the numbers of international correspondence chess ("5254 5755 7163"), files and
// ranks from 1 to 8? Single numbers are years and sums, so at least two are asked for, and nothing else but
// move numbers.

import { ANY_KIND, KIND_BIT } from '#lib/rules/moves-to.ts';
import { type Shape, shapeOf } from '../shape.ts';

const NUMBERS_ONLY = /^[\s\d.,;:()+#!?-]+$/;
const MEN = ['q', 'r', 'b', 'n'] as const;

/** A move in numbers, or a move number. */
export interface NumericToken {
  readonly start: number;
  readonly end: number;
  /** Empty for a move number. */
  readonly shapes: readonly Shape[];
  readonly n: number;
}

/** The moves and move numbers of such a text; null for any other. */
export function scanNumeric(text: string): readonly NumericToken[] | null {
  if (!NUMBERS_ONLY.test(text)) return null;
  const found: NumericToken[] = [];
  let moves = 0;
  for (const match of text.matchAll(/\d+/g)) {
    const [digits] = match;
    const start = match.index;
    const end = start + digits.length;
    if (/^[1-8]{4}[1-4]?$/.test(digits)) {
      found.push({ start, end, shapes: shapesOf(digits), n: 0 });
      moves += 1;
    } else if (digits.length > 3 || !'.):'.includes(text.charAt(end) || ' ')) return null;
    else found.push({ start, end: end + 1, shapes: [], n: Number(digits) });
  }
  return moves < 2 ? null : found;
}

function shapesOf(digits: string): readonly Shape[] {
  const [fromFiles = 0, fromRanks = 0, toFiles = 0, toRanks = 0] = [...digits].map(
    (digit) => 1 << (Number(digit) - 1),
  );
  const man = MEN[Number(digits.charAt(4)) - 1];
  const shape = shapeOf({ kinds: ANY_KIND, fromFiles, fromRanks, toFiles, toRanks });
  return man === undefined ? [shape] : [{ ...shape, kinds: KIND_BIT.p, promotion: man }];
}
