// What stands between the departure and the goal of a written move: a dash, an arrow, a capture in signs or in
// a word?

import { isCaptureSign } from './signs.ts';
import { takingWordAt } from './spoken.ts';

/** What stands between departure and goal. */
export interface Separator {
  readonly end: number;
  readonly isCapture: boolean;
  /** Blanks around a dash: two moves as likely as one. */
  readonly isWide: boolean;
  /** A word that means "takes". */
  readonly isWord: boolean;
}

/** The sign or the word between departure and goal, with at most one blank on each side. */
export function separatorAt(
  text: string,
  at: number,
  allowsBlanks: boolean,
  allowsSlash: boolean,
): Separator | null {
  const start = allowsBlanks && text.charAt(at) === ' ' ? at + 1 : at;
  const isWide = start > at;
  const sign = text.charAt(start);
  let end = start + 1;
  const found = { isWide, isWord: false };
  // The blank may stand behind the man ("B takes h7") and be read over already.
  if (isWide || (allowsBlanks && text.charAt(at - 1) === ' ')) {
    const taken = takingWordAt(text, start);
    if (taken > 0 && text.charAt(taken) === ' ')
      return { end: taken + 1, isCapture: true, isWide: true, isWord: true };
  }
  if (isCaptureSign(sign)) {
    if (sign === 'x' && ':-'.includes(text.charAt(end) || ' ')) end += 1;
    if (text.charAt(end) === ' ') {
      // "Qf7: and" is a colon of prose; "Q x f7" is a capture.
      if (sign === ':' || !allowsBlanks) return null;
      end += 1;
    } else if (sign === '*' && isWide) {
      // "Rc7 *Rh5": a star that puts right what stood before it.
      return null;
    }
    return { ...found, end, isCapture: true };
  }
  // "(e2,e4)": a pair of squares in brackets.
  if (sign === ',' && !isWide && text.charAt(at - 3) === '(' && text.charAt(at + 3) === ')')
    return { ...found, end, isCapture: false };
  // "Qb3>b8", "Qb3=>b8", "Qb3_b8": arrows and lines of the keyboard, glued on both sides.
  const arrow =
    isWide || allowsSlash ? null : /^(?:=>|>|_)(?=[a-hA-H][1-8])/.exec(text.slice(start, start + 4));
  if (arrow !== null) return { ...found, end: start + arrow[0].length, isCapture: false };
  if (sign === '-' || (sign === '/' && allowsSlash)) {
    while (text.charAt(end) === '-' && end < start + 3) end += 1;
    if (text.charAt(end) === '>') end += 1;
    else if (sign === '-' && isCaptureSign(text.charAt(end))) {
      end += text.charAt(end + 1) === '-' ? 2 : 1;
      return { ...found, end, isCapture: true };
    }
    if (isWide !== (text.charAt(end) === ' ')) return null;
    return { ...found, end: isWide ? end + 1 : end, isCapture: false };
  }
  return null;
}
