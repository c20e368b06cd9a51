// Which square, file or rank is written at a place of a text, and is it on the board at all?

import { fileAt, isLetterAt, isWordAt, OFF_BOARD, rankAt } from './signs.ts';
import { spokenRankAt } from './spoken.ts';

/** A file, a rank or both (-1 where it is not said), and the end of what says it. */
export interface Coordinate {
  readonly file: number;
  readonly rank: number;
  readonly end: number;
}

const CLOSES = ')]}';

/** "f7", "f", "7", "(b)", "(1)", and "a9" as off the board; null where there is none. */
export function coordinateAt(
  text: string,
  at: number,
  takesCapitals: boolean,
  hasMan: boolean,
): Coordinate | null {
  const isOpen = '([{'.includes(text.charAt(at) || ' ');
  if (hasMan && isOpen && CLOSES.includes(text.charAt(at + 3) || ' ')) {
    const inner = coordinateAt(text, at + 1, takesCapitals, false);
    return inner !== null && inner.end === at + 3 && inner.rank >= 0 ? { ...inner, end: at + 4 } : null;
  }
  if (isOpen && CLOSES.includes(text.charAt(at + 2) || ' ')) {
    const file = fileAt(text, at + 1, takesCapitals);
    const rank = rankAt(text, at + 1);
    return hasMan && (file >= 0 || rank >= 0) ? { file, rank, end: at + 3 } : null;
  }
  const file = fileAt(text, at, takesCapitals);
  if (file < 0) {
    const rank = rankAt(text, at);
    if (!hasMan || rank < 0) return null;
    return { file: -1, rank, end: at + 1 };
  }
  // "e four": a letter by itself, and never "a".
  const spoken = file > 0 && !isWordAt(text, at - 1) ? spokenRankAt(text, at + 1) : null;
  if (spoken !== null) return { file, ...spoken };
  // "f 7" as in "Q x f 7": only after a man; "f-7" by itself as well. "bc 2.Ba6" is a capture and a number.
  const sign = text.charAt(at + 1);
  const isApart =
    (sign === '-'
      ? hasMan || isAlone(text, at)
      : sign === ' ' && hasMan && fileAt(text, at - 1, false) < 0) && !isWordAt(text, at + 3);
  const rankPlace = isApart && rankAt(text, at + 2) >= 0 ? at + 2 : at + 1;
  const rank = rankAt(text, rankPlace);
  if (rank >= 0) return { file, rank, end: rankPlace + 1 };
  const digit = text.charAt(at + 1);
  if ((digit === '9' || digit === '0') && !isWordAt(text, at + 2))
    return { file, rank: OFF_BOARD, end: at + 2 };
  return { file, rank: -1, end: at + 1 };
}

/** A small letter with nothing but signs before it and a square behind it: "b-7", "b g7". */
function isAlone(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code > 97 && code <= 104 && !isWordAt(text, at - 1);
}

/** "b g7": a small letter and a blank, where no word stands before it ("plan b e4"). */
export function isLoneBishop(text: string, at: number): boolean {
  if (text.charAt(at) !== 'b' || rankAt(text, at + 3) < 0) return false;
  let before = at - 1;
  while (text.charAt(before) === ' ') before -= 1;
  return !isLetterAt(text, before);
}

/** Letters that stand for no file and begin no other word with a digit: keys beside a file's, and i and j. */
const STRANGE = 'ijuvwyz';
/** Letters that are no file behind a capture sign. */
export const STRANGE_BEHIND_CAPTURE = 'ijklmnopqrstuvwyz';

/** "Kz4", "Bi5": a goal off the board behind an English man's capital. */
export function offBoardAt(text: string, at: number, cursor: number): Coordinate | null {
  return cursor === at + 1 && 'KQRBN'.includes(text.charAt(at))
    ? strangeSquareAt(text, cursor, STRANGE)
    : null;
}

/** A letter that is no file, with a rank and the end of the word behind it: no move has that goal. */
export function strangeSquareAt(text: string, at: number, letters: string): Coordinate | null {
  const sign = text.charAt(at);
  if (sign === '' || !letters.includes(sign) || rankAt(text, at + 1) < 0 || isWordAt(text, at + 2))
    return null;
  return { file: OFF_BOARD, rank: rankAt(text, at + 1), end: at + 2 };
}

/** "R(e)8": the file in brackets and the rank behind them are one square. */
export function joinedBrackets(text: string, first: Coordinate | null): Coordinate | null {
  if (first === null || first.rank >= 0 || !CLOSES.includes(text.charAt(first.end - 1) || ' ')) return first;
  const rank = rankAt(text, first.end);
  return rank < 0 || isWordAt(text, first.end + 1) ? first : { ...first, rank, end: first.end + 1 };
}

/** The coordinate if it names a whole square, else null. */
export function wholeSquare(coordinate: Coordinate | null): Coordinate | null {
  return coordinate !== null && coordinate.file >= 0 && coordinate.rank >= 0 ? coordinate : null;
}
