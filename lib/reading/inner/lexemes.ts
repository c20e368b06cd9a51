// Into which pieces does a text fall: written moves, move numbers, brackets, words, signs?

import { type Shape, shapeOf } from '../shape.ts';
import { faceEnd, isAddress, runEnd } from './asides.ts';
import { isMeantAsMove, looksLikeMove } from './broken-moves.ts';
import { NAMES_BEFORE_A_SQUARE } from './further-words.ts';
import { type CastlingScan, scanCastling } from './scan-castling.ts';
import { type ScanContext, type Step, type Strength, scanCompact } from './scan-compact.ts';
import { scanDescriptive } from './scan-descriptive.ts';
import { type NumericToken, scanNumeric } from './scan-numeric.ts';
import { scanTail, type Tail } from './scan-tail.ts';
import { fileAt, isDigitAt, isLetterAt, isWordAt, rankAt } from './signs.ts';
import { takingWordAt, wordEnd } from './spoken.ts';
import { senseIn, sensesOf } from './word-table.ts';

/** A written move. */
export interface MoveLexeme {
  readonly type: 'move';
  readonly start: number;
  readonly end: number;
  readonly ways: readonly (readonly Step[])[];
  readonly strength: Strength;
  /** A square and nothing else but marks behind it: in a phrase it is a place. */
  readonly isBareSquare: boolean;
  readonly isQuestioned: boolean;
  readonly isExclaimed: boolean;
}

/** Anything else. `malformed` has letters and digits like a move but is none. */
export type Lexeme =
  | MoveLexeme
  | {
      readonly type: 'number';
      readonly start: number;
      readonly end: number;
      readonly n: number;
      readonly dots: number;
    }
  | { readonly type: 'open' | 'close'; readonly start: number; readonly end: number; readonly sign: string }
  | { readonly type: 'word'; readonly start: number; readonly end: number; readonly word: string }
  | { readonly type: 'malformed'; readonly start: number; readonly end: number; readonly isMoveLike: boolean }
  | { readonly type: 'sign'; readonly start: number; readonly end: number; readonly sign: string };

/** Cuts a folded text into lexemes; each character is looked at a bounded number of times. */
export function lexemesOf(text: string, context: ScanContext): Lexeme[] {
  const found: Lexeme[] = [];
  const numeric = isDigitAt(text, text.search(/\S/)) ? scanNumeric(text) : null;
  if (numeric !== null) return numeric.map(lexemeOfNumber);
  const quotes = !isQuoteAlone(text);
  let at = 0;
  let isLineStart = true;
  let gluedAt = -1;
  while (at < text.length) {
    const sign = text.charAt(at);
    if (sign === '\n') {
      found.push({ type: 'sign', start: at, end: at + 1, sign });
      at += 1;
      isLineStart = true;
      continue;
    }
    if (sign === ' ' || sign === '\t' || sign === '\r') {
      at += 1;
      continue;
    }
    const isLabel = isLineStart && context.hasCapitalMen && LABEL.test(text.slice(at, at + 5));
    const skipped = isLabel ? at + 2 : skipEnd(text, at, { isLineStart, skipsQuotes: quotes });
    isLineStart = false;
    if (skipped > at) {
      at = skipped;
      continue;
    }
    const lexeme = wordOfProse(text, lexemeAt(text, at, context, at === gluedAt), found[found.length - 1]);
    if (lexeme?.type === 'word' && isWordAt(text, lexeme.end)) gluedAt = lexeme.end;
    if (lexeme?.type === 'malformed' && isMeantAsMove(text.slice(lexeme.start, lexeme.end), found))
      found.push({ ...lexeme, isMoveLike: true });
    else if (lexeme !== null) found.push(lexeme);
    at = lexeme?.end ?? at + 1;
  }
  return found;
}

function lexemeOfNumber({ start, end, shapes, n }: NumericToken): Lexeme {
  if (shapes.length === 0) return { type: 'number', start, end, n, dots: 1 };
  const tail = { end, promotions: [], isQuestioned: false, isExclaimed: false, isPassant: false };
  return withTail(start, [[{ shapes, start, end }]], tail, 'strong');
}

/** "de" and "da" behind a word are words, not captures by two files; "the c8 rook" is a rook and no new man. */
function wordOfProse(text: string, lexeme: Lexeme | null, before: Lexeme | undefined): Lexeme | null {
  if (lexeme?.type === 'move' && before?.type === 'word' && senseIn(before.word, 'article') !== null) {
    const isMan = /^[a-h][1-8] \p{Ll}/u.test(text.slice(lexeme.start, lexeme.end));
    if (isMan) return { ...lexeme, strength: 'square', isBareSquare: true };
  }
  if (lexeme?.type !== 'move' || lexeme.strength !== 'files' || before?.type !== 'word') return lexeme;
  // "de alfil" is no capture with a promotion either.
  const end = wordEnd(text, lexeme.start);
  const word = text.slice(lexeme.start, end).toLowerCase();
  return sensesOf(word).length === 0 ? lexeme : { type: 'word', start: lexeme.start, end, word };
}

/** Every line is marked as a quotation: then nothing else is the answer. */
function isQuoteAlone(text: string): boolean {
  if (!text.trimStart().startsWith('>')) return false;
  return text.split('\n').every((line) => line.trim() === '' || line.trimStart().startsWith('>'));
}

/** The end of what is no part of an answer: quoted lines, PGN tags, addresses, clock times. */
function skipEnd(
  text: string,
  at: number,
  { isLineStart, skipsQuotes }: { readonly isLineStart: boolean; readonly skipsQuotes: boolean },
): number {
  const sign = text.charAt(at);
  if (isLineStart) {
    if (sign === '>' && text.charAt(at + 1) !== '!' && skipsQuotes) return lineEnd(text, at);
  }
  if (sign === '[' && /^\[[A-Za-z]+ "/.test(text.slice(at, at + 24))) return tagEnd(text, at);
  if (sign === '[' && text.charAt(at + 1) === '%') {
    const close = text.indexOf(']', at);
    return close < 0 ? at : close + 1;
  }
  if (isWordAt(text, at) && !isWordAt(text, at - 1)) {
    const end = runEnd(text, at);
    if (isAddress(text, at, end)) return end;
  }
  if (':;='.includes(sign) && !isWordAt(text, at - 1)) {
    const end = faceEnd(text, at);
    if (end > at) return end;
  }
  if (sign === '@' && !isWordAt(text, at - 1)) {
    let end = at + 1;
    while (isWordAt(text, end) || text.charAt(end) === '_') end += 1;
    return end > at + 1 ? end : at;
  }
  return at;
}

function lineEnd(text: string, at: number): number {
  const end = text.indexOf('\n', at);
  return end < 0 ? text.length : end;
}

/** Several tags may stand in one line. */
function tagEnd(text: string, at: number): number {
  const end = lineEnd(text, at);
  const close = text.indexOf('"]', at);
  return close >= 0 && close < end ? close + 2 : end;
}

function lexemeAt(text: string, at: number, context: ScanContext, isGlued: boolean): Lexeme | null {
  const sign = text.charAt(at);
  if (context.hasSideNumbers && (sign === 'W' || sign === 'B') && !isWordAt(text, at - 1)) {
    const match = /^[WB](\d{1,2})(?![\p{L}\d])/u.exec(text.slice(at, at + 4));
    if (match !== null)
      return {
        type: 'number',
        start: at,
        end: at + match[0].length,
        n: Number(match[1]),
        dots: sign === 'W' ? 1 : 3,
      };
  }
  if ('([{'.includes(sign)) return { type: 'open', start: at, end: at + 1, sign };
  if (')]}'.includes(sign)) return { type: 'close', start: at, end: at + 1, sign };
  if (isGlued || !isWordAt(text, at - 1) || isWrittenEnd(text, at)) {
    const move = moveAt(text, at, context);
    if (move !== null) return move;
  }
  if (isDigitAt(text, at)) return numberAt(text, at, context);
  if (isLetterAt(text, at)) return wordAt(text, at);
  return { type: 'sign', start: at, end: at + 1, sign };
}

/** Behind a square a new move may begin without a blank ("e4e5", "Nf3Nc6"). */
function isWrittenEnd(text: string, at: number): boolean {
  return rankAt(text, at - 1) >= 0 || text.charAt(at - 1) === '.';
}

function moveAt(text: string, at: number, context: ScanContext): MoveLexeme | null {
  const castling = scanCastling(text, at);
  if (castling !== null) return castlingMove(text, at, castling);
  const descriptive = scanDescriptive(text, at);
  if (descriptive !== null) {
    const tail = scanTail(text, descriptive.end, descriptive.canPromote);
    const step = { shapes: promoted([descriptive.shape], tail), start: at, end: tail.end };
    return withTail(at, [[step]], tail, 'strong');
  }
  const scan = scanCompact(text, at, context);
  if (scan === null) return null;
  const isDescription = scan.strength === 'square' && ARTICLE.test(text.slice(Math.max(0, at - 5), at));
  const tail = scanTail(text, scan.end, scan.canPromote && !isDescription);
  if (!endsWell(text, tail.end, scan.strength, context)) return null;
  const ways = scan.ways.map((way) =>
    way.map((step, index) =>
      index === way.length - 1 ? { ...step, shapes: promoted(step.shapes, tail), end: tail.end } : step,
    ),
  );
  const isBare = scan.strength === 'square';
  return withTail(at, ways, tail, tail.end > scan.end && isBare ? 'strong' : scan.strength, isBare);
}

function castlingMove(text: string, at: number, { end, shape, isSure }: CastlingScan): MoveLexeme {
  const tail = scanTail(text, end, false);
  const step = { shapes: [shape], start: at, end: tail.end };
  return withTail(at, [[step]], tail, isSure ? 'strong' : 'files');
}

function withTail(
  start: number,
  ways: MoveLexeme['ways'],
  tail: Tail,
  strength: Strength,
  isBare = false,
): MoveLexeme {
  const { end, isQuestioned, isExclaimed } = tail;
  const isBareSquare = isBare && tail.promotions.length === 0 && !tail.isPassant;
  return { type: 'move', start, end, ways, strength, isBareSquare, isQuestioned, isExclaimed };
}

/** The shapes with the new man that the tail names; men other than pawns do not become another. */
function promoted(shapes: readonly Shape[], tail: Tail): readonly Shape[] {
  if (tail.isPassant) return [...shapes, ...shapes.flatMap(passantShape)];
  if (tail.promotions.length === 0) return shapes;
  return shapes.flatMap((shape) =>
    (shape.kinds & 2) === 0
      ? []
      : tail.promotions.map(({ kind, langs }) => ({
          ...shape,
          kinds: 2,
          promotion: kind,
          langs: langs === -1 ? shape.langs : shape.langs === -1 ? langs : shape.langs & langs,
        })),
  );
}

/** "exd5 e.p." names the square of the pawn taken: any capture in passing on these files will do. */
function passantShape({ kinds, langs, fromFiles, toFiles }: Shape): Shape[] {
  return (kinds & 2) === 0
    ? []
    : [shapeOf({ kinds: 2, langs, fromFiles, toFiles, isCapture: true, isPassant: true, cost: 6 })];
}

/** A move ends where its word ends, or where another move, a number or a known word is glued on. */
function endsWell(text: string, end: number, strength: Strength, context: ScanContext): boolean {
  if (!isWordAt(text, end)) return true;
  if (isDigitAt(text, end)) return /^(?:\d{1,3}\.|1[-:]0|0[-:]1|1\/2)/.test(text.slice(end, end + 4));
  if (scanCompact(text, end, context) !== null) return true;
  if (scanCastling(text, end) !== null) return true;
  let stop = end;
  while (stop < end + 16 && isLetterAt(text, stop)) stop += 1;
  const word = text.slice(end, stop).toLowerCase();
  if (isDigitAt(text, stop)) return false;
  return strength === 'strong' ? word.length > 1 || word === 'x' : senseIn(word, 'check') !== null;
}

function numberAt(text: string, at: number, context: ScanContext): Lexeme {
  let end = at;
  while (end < at + 12 && isDigitAt(text, end)) end += 1;
  const n = Number(text.slice(at, end));
  const next = text.charAt(end);
  // A clock time, a decimal, a score, a fraction: no number of a move.
  if ((next === ':' || next === ',' || next === '/' || next === '%') && isDigitAt(text, end + 1)) {
    return { type: 'sign', start: at, end: chainEnd(text, end), sign: '0' };
  }
  if (next === '%') return { type: 'sign', start: at, end: end + 1, sign: '0' };
  if (next === '-' && isDigitAt(text, end + 1) && !isWordAt(text, end + 2)) {
    return { type: 'sign', start: at, end: end + 2, sign: '0' };
  }
  if (next === '.' && isDigitAt(text, end + 1) && moveAt(text, end + 1, context) === null) {
    return { type: 'sign', start: at, end: chainEnd(text, end), sign: '0' };
  }
  const ordinal = /^(?:st|nd|rd|th)(?![a-z])/.exec(text.slice(end, end + 3));
  if (ordinal !== null) return { type: 'number', start: at, end: end + 2, n, dots: 0 };
  if (isLetterAt(text, end) && moveAt(text, end, context) === null) return malformedAt(text, at);
  return dotted(text, at, end, n);
}

function dotted(text: string, start: number, digitsEnd: number, n: number): Lexeme {
  let end = digitsEnd;
  let dots = 0;
  while (
    end < digitsEnd + 10 &&
    (text.charAt(end) === '.' || (text.charAt(end) === ' ' && text.charAt(end + 1) === '.'))
  ) {
    if (text.charAt(end) === '.') dots += 1;
    end += 1;
  }
  const isListed = text.charAt(end) === ')' && text.lastIndexOf('(', start) <= text.lastIndexOf(')', start);
  if (dots === 0 && (isListed || text.charAt(end) === ':'))
    return { type: 'number', start, end: end + 1, n, dots: 1 };
  if (text.charAt(end) === '-' && !isWordAt(text, end + 1))
    return { type: 'number', start, end: end + 1, n, dots };
  return { type: 'number', start, end, n, dots };
}

function chainEnd(text: string, at: number): number {
  let end = at;
  while (end < at + 12 && (isDigitAt(text, end) || ':.,/%'.includes(text.charAt(end)))) end += 1;
  return Math.max(end, at + 1);
}

function wordAt(text: string, at: number): Lexeme {
  let end = at;
  while (end < at + 40 && (isLetterAt(text, end) || (text.charAt(end) === "'" && isLetterAt(text, end + 1))))
    end += 1;
  if (isDigitAt(text, end)) {
    // "queenxf7": a man's name glued to its goal.
    for (let stop = end; stop >= at + 4; stop -= 1) {
      const part = text.slice(at, stop).toLowerCase();
      if (senseIn(part, 'piece') === null) continue;
      const isTaking = text.charAt(stop) === 'x' && fileAt(text, stop + 1, true) >= 0;
      return { type: 'word', start: at, end: isTaking ? stop + 1 : stop, word: part };
    }
    return malformedAt(text, at);
  }
  if ('@&$'.includes(text.charAt(end)) && text.charAt(end) !== '' && isWordAt(text, end + 1))
    return malformedAt(text, at);
  // "Kx" is "king takes" in two signs; "Kx..." is cut off.
  const taker =
    end === at + 2 && /^.[xX](?!\.\.)/.test(text.slice(at, at + 4)) ? TAKERS.get(text.charAt(at)) : undefined;
  if (taker !== undefined) return { type: 'word', start: at, end: at + 1, word: taker };
  // "B takes pawn h7": a small b would be a file.
  const isBishop = end === at + 1 && text.charAt(at) === 'B' && /^ \p{Ll}/u.test(text.slice(end, end + 2));
  if (isBishop && takingWordAt(text, end + 1) > 0) return { type: 'word', start: at, end, word: 'bishop' };
  const side = /^[- ]?'?s?[- ]?(?:side|wing)/i.exec(text.slice(end, end + 8));
  end = compoundEnd(text, at, end);
  const plain = text.slice(at, end).toLowerCase();
  const word = nameBefore(text, plain, end) ?? lastingWord(text, plain, end) ?? plain;
  if (side !== null && (word === 'king' || word === 'queen' || word === "king's" || word === "queen's")) {
    return {
      type: 'word',
      start: at,
      end: end + side[0].length,
      word: `${word.slice(0, word.startsWith('k') ? 4 : 5)}side`,
    };
  }
  return { type: 'word', start: at, end, word };
}

const TAKERS: ReadonlyMap<string, string> = new Map([
  ['K', 'king'],
  ['Q', 'queen'],
  ['R', 'rook'],
  ['B', 'bishop'],
  ['N', 'knight'],
]);

/** "Damenopfer" is a man's name and a word of its own; the end of the name, or of the whole word. */
function compoundEnd(text: string, start: number, end: number): number {
  const word = text.slice(start, end).toLowerCase();
  if (!word.endsWith('opfer')) return end;
  const name = word.slice(0, -5);
  return senseIn(name, 'piece') === null ? end : start + name.length;
}

/** "Takes forever", "takes place": the verb of an idiom captures nothing; null for other words. */
function lastingWord(text: string, word: string, end: number): string | null {
  if (word !== 'takes' && word !== 'take' && word !== 'took') return null;
  return IDIOM.test(text.slice(end, end + 12)) ? 'lasts' : null;
}

const IDIOM =
  /^ (?:forever|ages|long|time|care|place|part|me|us|some time|a while|a look|a bow|a break)(?![a-z])/i;

/** "The b1 knight" is no promotion. */
const ARTICLE = /(?:^|[^a-z])(?:the|my|his|der|den) $/i;

/** The plain name of a man meant by a word that is prose elsewhere ("torn d8"); null for other words. */
function nameBefore(text: string, word: string, end: number): string | null {
  const name = NAMES_BEFORE_A_SQUARE.get(word);
  if (name === undefined || text.charAt(end) !== ' ') return null;
  if (fileAt(text, end + 1, false) >= 0 && rankAt(text, end + 2) >= 0) return name;
  return takingWordAt(text, end + 1) > 0 ? name : null;
}

/** "A1: Qb8+": a label and no square, where men have capital letters. */
const LABEL = /^[A-H]\d ?[:)] /;

/** A run of signs with letters and digits that is no move as it stands; at most 12 characters. */
function malformedAt(text: string, at: number): Lexeme {
  let end = at;
  while (end < at + 12 && (isWordAt(text, end) || '-=+#@&'.includes(text.charAt(end) || ' '))) end += 1;
  while (end > at + 1 && !isWordAt(text, end - 1)) end -= 1;
  while (isWordAt(text, end) && end < at + 40) end += 1;
  end = Math.max(end, at + 1);
  return { type: 'malformed', start: at, end, isMoveLike: looksLikeMove(text.slice(at, end)) };
}
