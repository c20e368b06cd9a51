// Which written move begins at this place? SAN and its kin: long algebraic, coordinates, figurines,
// national letters, captures in every sign. Written by hand: each call looks at a bounded stretch.

import { ANY_KIND, KIND_BIT } from '#lib/rules/moves-to.ts';
import { type Shape, shapeOf } from '../shape.ts';
import {
  type Coordinate,
  coordinateAt,
  isLoneBishop,
  joinedBrackets,
  offBoardAt,
  STRANGE_BEHIND_CAPTURE,
  strangeSquareAt,
  wholeSquare,
} from './coordinates.ts';
import { RARE_LANGUAGES, SPELLINGS } from './letters.ts';
import { type Separator, separatorAt } from './separators.ts';
import { fileAt, isCapital, isDigitAt, isLetterAt, isWordAt, OFF_BOARD, rankAt } from './signs.ts';
import { takingWordAt } from './spoken.ts';
import { senseIn } from './word-table.ts';

/** What a scan needs to know about the whole text. */
export interface ScanContext {
  readonly hasCyrillic: boolean;
  /** A man's letter in capitals stands somewhere: small letters are then rather files. */
  readonly hasCapitalMen: boolean;
  /** No small Latin letter anywhere: capitals are no evidence. */
  readonly isAllCapitals: boolean;
  /** A piece letter that English does not have stands before a square somewhere (rarity 3 counts). */
  readonly allowsRare: boolean;
  /** Moves are numbered by side ("W1", "B1"). */
  readonly hasSideNumbers: boolean;
}

/** One way to take the characters: a move, or several in a row, each with its possible shapes. */
export interface Step {
  readonly shapes: readonly Shape[];
  readonly start: number;
  readonly end: number;
}

/** How surely the characters are a move: prose also has squares and two-letter words. */
export type Strength = 'strong' | 'square' | 'files';

/** A written move: where it ends and the ways to take it. */
export interface Scan {
  readonly end: number;
  readonly ways: readonly (readonly Step[])[];
  readonly strength: Strength;
  /** The goal is a square of the last or first rank reached by a pawn: a promotion may follow. */
  readonly canPromote: boolean;
}

/** A man named before the squares. */
interface Prefix {
  readonly end: number;
  readonly senses: readonly { readonly kinds: number; readonly langs: number }[];
  readonly cost: number;
  readonly isCapital: boolean;
}

const NO_PREFIX = { senses: [{ kinds: KIND_BIT.p, langs: -1 }], cost: 0, isCapital: false } as const;

/** The move written at `at`, or null. The longest spelling of the man comes first. */
export function scanCompact(text: string, at: number, context: ScanContext): Scan | null {
  let best: Scan | null = null;
  for (const prefix of prefixesAt(text, at, context)) {
    const scan = scanAfter(text, at, prefix, context);
    if (scan === null || (best !== null && scan.end < best.end)) continue;
    best = best === null || scan.end > best.end ? scan : joinScans(best, scan);
  }
  return best;
}

/** Two ways to take the same characters ("bxc3": a pawn's capture, or a small letter for the bishop). */
function joinScans(one: Scan, two: Scan): Scan {
  const ways = joinWays([...one.ways, ...two.ways]);
  return { ...one, ways, canPromote: one.canPromote || two.canPromote };
}

/** Ways of one step are one step with several shapes. */
function joinWays(ways: readonly (readonly Step[])[]): readonly (readonly Step[])[] {
  const singles = ways.filter((way) => way.length === 1).flat();
  const first = singles[0];
  if (first === undefined) return ways;
  const joined: Step = { ...first, shapes: singles.flatMap(({ shapes }) => shapes) };
  return [[joined], ...ways.filter((way) => way.length > 1)];
}

function prefixesAt(text: string, at: number, context: ScanContext): Prefix[] {
  const found: Prefix[] = [];
  const sign = text.charAt(at);
  const upper = sign.toUpperCase();
  for (const spelling of SPELLINGS.get(upper) ?? []) {
    const end = at + spelling.sign.length;
    if (spelling.sign.length > 1 && text.slice(at, end).toUpperCase() !== spelling.sign) continue;
    const senses = spelling.senses
      .filter(({ needsCyrillic }) => !needsCyrillic || context.hasCyrillic)
      .map(({ kindBit, langs }) => ({
        kinds: kindBit,
        langs: context.allowsRare || langs === -1 ? langs : langs & ~RARE_LANGUAGES,
      }))
      .filter(({ langs }) => langs !== 0);
    if (senses.length === 0) continue;
    const isUpper = sign === upper;
    // "b2xc3" begins with a square.
    const isSquare = rankAt(text, at + 1) >= 0 && fileAt(text, at, false) >= 0;
    found.push({
      end,
      senses,
      cost: isUpper || !(context.hasCapitalMen || isSquare) ? 0 : 1,
      isCapital: isUpper,
    });
  }
  found.push({ ...NO_PREFIX, end: at });
  return found;
}

function scanAfter(text: string, at: number, prefix: Prefix, context: ScanContext): Scan | null {
  const hasMan = prefix.end > at;
  const takesCapitals = !hasMan || prefix.isCapital || context.isAllCapitals;
  let cursor = prefix.end;
  if (hasMan && (prefix.isCapital || isLoneBishop(text, at))) {
    // "R/h7-e7", "R-h7-e7": read over before a whole square only.
    const isSigned = '/-'.includes(text.charAt(cursor) || 'x') && rankAt(text, cursor + 2) >= 0;
    if (isSigned || ' .'.includes(text.charAt(cursor) || 'x')) cursor += 1;
  }
  const first = joinedBrackets(
    text,
    offBoardAt(text, at, cursor) ?? coordinateAt(text, cursor, takesCapitals, hasMan),
  );
  const afterFirst = first?.end ?? cursor;
  const isWhole = wholeSquare(first) !== null;
  const isSpaced =
    first !== null &&
    text.charAt(afterFirst) === ' ' &&
    (text.startsWith(' x ', afterFirst) || takingWordAt(text, afterFirst + 1) > 0);
  const separator = separatorAt(text, afterFirst, hasMan || isWhole || isSpaced, !isWhole);
  if (separator !== null && (first !== null || hasMan)) {
    // "Kx Rh5": the blank parts two moves; "K x Rh5" and "KxRh5" name the man taken.
    const isParted = hasMan && first === null && !separator.isWide && text.charAt(separator.end - 1) === ' ';
    const namesVictim = separator.isCapture && !isParted;
    const victim = namesVictim ? victimAt(text, separator.end) : { kinds: 0, end: separator.end };
    const second =
      coordinateAt(text, victim.end, takesCapitals || victim.kinds > 0, hasMan) ??
      (separator.isCapture ? strangeSquareAt(text, victim.end, STRANGE_BEHIND_CAPTURE) : null);
    const goal = wholeSquare(second);
    if (goal !== null) {
      return twoCoordinates(text, at, {
        prefix,
        first,
        second: goal,
        victims: victim.kinds,
        separator,
        context,
      });
    }
    const isByMan = !separator.isWide || (separator.isWord && isCapital(text.charAt(separator.end)));
    if (hasMan && first === null && separator.isCapture && isByMan) {
      const byMan = captureOfMan(text, at, prefix, separator.end, null);
      if (byMan !== null) return byMan;
    }
    // "bxN", "exR=Q": of the squares of a pawn's capture only the first is named.
    const isPawns = separator.isCapture && !separator.isWide && !context.isAllCapitals && !hasMan;
    const taken = isPawns && isCapital(text.charAt(separator.end)) ? separator.end : -1;
    if (!hasMan && second !== null && first !== null && second.rank < 0 && first.rank < 0) {
      const files = separator.isCapture ? filesOnly(text, at, first, second, 'strong') : null;
      if (files !== null || taken < 0) return files;
    }
    if (taken >= 0) {
      const byMan = captureOfMan(text, at, prefix, taken, first);
      if (byMan !== null) return byMan;
    }
  }
  if (first === null) return null;
  // "Nb d2": a blank behind the file that tells two men apart.
  const isApart = prefix.isCapital && hasMan && first.rank < 0 && text.charAt(first.end) === ' ';
  // "Nd2(b1)": what stands in brackets behind a whole square is no goal.
  const isClosed = isWhole && '([{'.includes(text.charAt(first.end) || ' ');
  const adjacent = isClosed
    ? null
    : coordinateAt(text, isApart ? first.end + 1 : first.end, takesCapitals, hasMan);
  const goal = wholeSquare(adjacent);
  if (goal !== null) {
    return twoCoordinates(text, at, { prefix, first, second: goal, victims: 0, separator: null, context });
  }
  const square = wholeSquare(first);
  if (square !== null)
    return oneCoordinate(at, prefix, square, !context.isAllCapitals && isCapital(text.charAt(at)));
  if (!hasMan && adjacent !== null && adjacent.rank < 0 && first.rank < 0) {
    return filesOnly(text, at, first, adjacent, 'files');
  }
  return null;
}

/** A man taken, named between the sign and the square: "xPf7". */
function victimAt(text: string, at: number): { readonly kinds: number; readonly end: number } {
  const sign = text.charAt(at);
  if (!isCapital(sign) || rankAt(text, at + 1) >= 0) return { kinds: 0, end: at };
  const spelling = SPELLINGS.get(sign)?.find((one) => one.sign.length === 1);
  if (spelling === undefined || fileAt(text, at + 1, false) < 0) return { kinds: 0, end: at };
  return { kinds: spelling.senses.reduce((kinds, { kindBit }) => kinds | kindBit, 0), end: at + 1 };
}

/** "LxT", "bxr", "Bxrook", "exR": a capture by the man taken; `origin` says where the taker stands. */
function captureOfMan(
  text: string,
  at: number,
  prefix: Prefix,
  from: number,
  origin: Coordinate | null,
): Scan | null {
  let end = from;
  while (end < from + 12 && isLetterAt(text, end)) end += 1;
  const word = text.slice(from, end);
  if (isDigitAt(text, end) || word === '') return null;
  const named = senseIn(word.toLowerCase(), 'piece');
  const spelling = SPELLINGS.get(word.toUpperCase().charAt(0))?.find(
    ({ sign }) => sign === word.toUpperCase(),
  );
  const victims = [
    ...(named === null ? [] : [{ kindBit: named.kinds, langs: -1 }]),
    ...(spelling?.senses ?? []).filter(({ needsCyrillic }) => !needsCyrillic),
  ];
  const shapes = prefix.senses.flatMap(({ kinds, langs }) =>
    victims
      .filter((victim) => (victim.langs & langs & ~RARE_LANGUAGES) !== 0)
      .map((victim) =>
        shapeOf({
          kinds,
          langs: langs & victim.langs,
          isCapture: true,
          victims: victim.kindBit,
          fromFiles: maskOf(origin?.file ?? -1),
          fromRanks: maskOf(origin?.rank ?? -1),
          cost: prefix.cost,
        }),
      ),
  );
  if (shapes.length === 0) return null;
  return { end, ways: [[{ shapes, start: at, end }]], strength: 'strong', canPromote: prefix.end === at };
}

interface TwoParts {
  readonly prefix: Prefix;
  readonly first: Coordinate | null;
  readonly second: Coordinate;
  readonly victims: number;
  readonly separator: Separator | null;
  readonly context: ScanContext;
}

function twoCoordinates(text: string, at: number, parts: TwoParts): Scan | null {
  const { prefix, first, second, victims, separator } = parts;
  const hasMan = prefix.end > at;
  // "Q to somewhere" letters glued behind: not a move but a word.
  if (
    isLetterAt(text, second.end) &&
    !hasMan &&
    first !== null &&
    wholeSquare(first) === null &&
    separator === null
  ) {
    if (fileAt(text, second.end, false) < 0 && !isMoveTail(text, second.end)) return null;
  }
  // Without a letter the man is whichever stands on the square ("h5f7"); a lone file is a pawn's.
  const departure = wholeSquare(first);
  const isLong = departure !== null;
  const isCapture = separator?.isCapture ?? false;
  const shapes = prefix.senses.map(({ kinds, langs }) =>
    shapeOf({
      kinds: !hasMan && isLong ? ANY_KIND : kinds,
      langs,
      fromFiles: maskOf(first?.file ?? -1),
      fromRanks: maskOf(first?.rank ?? -1),
      toFiles: maskOf(second.file),
      toRanks: maskOf(second.rank),
      isCapture,
      victims,
      cost: prefix.cost + oddity(text, at, parts),
    }),
  );
  const whole: Step = { shapes, start: at, end: second.end };
  const ways: Step[][] = [[whole]];
  if (departure !== null && !isCapture) {
    const one = oneCoordinate(at, prefix, departure);
    const start = separator?.end ?? departure.end;
    const two = oneCoordinate(start, { ...NO_PREFIX, end: start }, second);
    ways.push([...(one.ways[0] ?? []), ...(two.ways[0] ?? [])]);
  }
  return {
    end: second.end,
    ways,
    strength: 'strong',
    canPromote: isLastRank(second.rank) && (!hasMan || isPawnToo(prefix)),
  };
}

/** "Bxc3" is rather a bishop than a capital file, "bb3" rather a bishop than a pawn on its own file. */
function oddity(text: string, at: number, { prefix, first, second, separator, context }: TwoParts): number {
  if (prefix.end > at || wholeSquare(first) !== null) return 0;
  if (separator === null && first?.file === second.file) return 3;
  return context.isAllCapitals || !isCapital(text.charAt(at)) ? 0 : 2;
}

function isMoveTail(text: string, at: number): boolean {
  return /^(?:e\.?p|[QRBNqrbnDTSLCFAHVJWG](?![a-zA-Z])|x(?![a-zA-Z])|ch\b|mate|matt?\b|check)/.test(
    text.slice(at, at + 6),
  );
}

function oneCoordinate(at: number, prefix: Prefix, square: Coordinate, isCapitalFile = false): Scan {
  const hasMan = prefix.end > at;
  const shapes = prefix.senses.map(({ kinds, langs }) =>
    shapeOf({
      kinds,
      langs,
      toFiles: maskOf(square.file),
      toRanks: maskOf(square.rank),
      cost: prefix.cost,
    }),
  );
  // "Chapter B9" names no move.
  const isOffBoard = square.rank === OFF_BOARD && !isCapitalFile;
  const strength = hasMan || isOffBoard ? 'strong' : 'square';
  const canPromote = isLastRank(square.rank) && (!hasMan || isPawnToo(prefix));
  return { end: square.end, ways: [[{ shapes, start: at, end: square.end }]], strength, canPromote };
}

/** "exd", "ed": a pawn's capture by its two files. */
function filesOnly(
  text: string,
  at: number,
  first: Coordinate,
  second: Coordinate,
  strength: Strength,
): Scan | null {
  if (Math.abs(first.file - second.file) !== 1 || isWordAt(text, second.end)) return null;
  const shape = shapeOf({
    kinds: KIND_BIT.p,
    fromFiles: maskOf(first.file),
    toFiles: maskOf(second.file),
    isCapture: true,
    cost: 1,
  });
  const step: Step = { shapes: [shape], start: at, end: second.end };
  return { end: second.end, ways: [[step]], strength, canPromote: true };
}

function maskOf(index: number): number {
  if (index === OFF_BOARD) return 0;
  return index < 0 ? 255 : 1 << index;
}

function isPawnToo(prefix: Prefix): boolean {
  return prefix.senses.some(({ kinds }) => kinds === KIND_BIT.p);
}

function isLastRank(rank: number): boolean {
  return rank === 0 || rank === 7;
}
