// Which run of letters and digits that is no move was meant as one ("Qxz9", "1.Rj10")? An answer whose square or
// man does not exist could not be read (`unreadable`, with its place); a room or a version in prose is chatter.

import { senseIn } from './word-table.ts';

/** What the token's neighbours are, as far as it matters here: words and numbers. */
interface Neighbour {
  readonly type: string;
  readonly word?: string;
  readonly dots?: number;
}

/** Longest token that a viewer would take for a move. */
const LONGEST = 8;
/** A square with a sign too many or in the wrong order, or a man who takes on a letter that is no file. */
const LIKE_A_MOVE = /[a-h][KQRBNx:]?[1-8]|[KQRBN]x?[1-8][a-h]|(?:[KQRBN][a-h1-8]?|[a-h])x[i-wyz][1-8]/;
/** "Txz9", "Qxe99": nothing but a move has a capture sign between a capital and a square. */
const TAKES = /^\p{Lu}[a-h1-8]?x[a-z]\d{1,2}$/u;
/** "Rj10", "K9", "Tx9", "z9": a man, a capture, a place. */
const SHORT = /^(?:\p{Lu}[a-h1-8]?[x:-]?[a-z]?|[a-h]?x?[a-z])\d{1,2}$/u;
/** "j8": behind "rook to". */
const PLACE = /^[a-z]\d{1,2}$/;

/** "b2b", "f2f": from one to the other, as people write it on the way. */
const SHORTHAND = /^[a-z]2[a-z]$/i;

/** True where the token alone looks like a move. */
export function looksLikeMove(token: string): boolean {
  return !SHORTHAND.test(token) && token.length <= LONGEST && (LIKE_A_MOVE.test(token) || TAKES.test(token));
}

/** True where what stands before the token says that a move was meant. */
export function isMeantAsMove(token: string, before: readonly Neighbour[]): boolean {
  return (SHORT.test(token) && isBehindMoveNumber(before)) || (PLACE.test(token) && isBehindMan(before));
}

/** "1.", "2...": a number with dots, and no word before it that it could count ("Windows 11. B9 is mine"). */
function isBehindMoveNumber(before: readonly Neighbour[]): boolean {
  const number = before[before.length - 1];
  return number?.type === 'number' && (number.dots ?? 0) > 0 && before[before.length - 2]?.type !== 'word';
}

/** "Rook to j8", "knight takes z9", "the bishop z4". */
function isBehindMan(before: readonly Neighbour[]): boolean {
  let at = before.length - 1;
  if (hasRole(before[at], 'to') || hasRole(before[at], 'on')) at -= 1;
  if (hasRole(before[at], 'take') || hasRole(before[at], 'go')) at -= 1;
  return hasRole(before[at], 'piece');
}

function hasRole(one: Neighbour | undefined, role: 'piece' | 'take' | 'go' | 'to' | 'on'): boolean {
  return one?.type === 'word' && senseIn(one.word ?? '', role) !== null;
}
