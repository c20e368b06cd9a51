// Which plain characters does a viewer's text consist of, once markup, styled letters, invisible signs
// and accents are taken off, and where did each stand (rules R1, R7)?

import { FIGURINES } from '#lib/words/piece-letters.ts';
import { entityAt } from './entities.ts';
import { tagAt } from './tags.ts';

/** Longest text that is read, in UTF-16 units (rule R7). */
export const LONGEST_TEXT = 4000;
/** Longest folded text: a single sign may unfold into many. */
const LONGEST_FOLDED = 8000;

/** A text in plain characters, each with its place in the original. */
export interface FoldedText {
  readonly text: string;
  /** Start and end of each plain character in the original, or null where both texts are the same. */
  readonly starts: Int32Array | null;
  readonly ends: Int32Array | null;
  /** 1 where the writer struck a character out; null where nothing is struck. */
  readonly struck: Uint8Array | null;
  readonly isCut: boolean;
}

/** Signs that stand for another, where Unicode's own compatibility forms do not say so. */
const STAND_INS = new Map<string, string>(
  [
    ['×✕✖✗⨯╳⤫', 'x'],
    ['‐‑‒–—―−⁃﹘﹣－', '-'],
    ['→➔➝➞⇒⟶➜⮕', '-'],
    ['†✝', '+'],
    ['‡♯≠', '#'],
    ['“”„«»‟〝〞', '"'],
    ['‘’‚‛´`ʼ', "'"],
    ['•·∙◦▪●', ' '],
    ['ԚԛꞯǪǫ', 'Q'],
    ['ıİ', 'i'],
    ['łŁ', 'l'],
    ['øØ', 'o'],
    ['đĐð', 'd'],
    ['⟨〈【「『', '('],
    ['⟩〉】」』', ')'],
    ['✓✔✅☑', ' '],
    ['❓❔', '?'],
    ['❗❕', '!'],
    ['ǀǁ│∣｜¦', '|'],
  ].flatMap(([signs = '', to = '']) => [...signs].map((sign): [string, string] => [sign, to])),
);
for (const [index, sign] of [...'ᴀʙᴄᴅᴇꜰɢʜɪᴊᴋʟᴍɴᴏᴘ ʀꜱᴛᴜᴠᴡ ʏᴢ'].entries())
  if (sign !== ' ') STAND_INS.set(sign, String.fromCharCode(97 + index));
STAND_INS.set('…', '...').set('ß', 'ss').set('æ', 'ae').set('œ', 'oe').set('⁄', '/');

const FIGURINE_SIGNS = new Set(Object.values(FIGURINES).flat());
/** Pictures that stand for a man where a square is glued to them; elsewhere they are ornaments. */
const PICTURES = new Map<string, string>(
  [
    ['🐴🐎🏇', '♘'],
    ['🏰🏯', '♖'],
    ['👸', '♕'],
    ['🤴', '♔'],
    ['👑', '冠'],
  ].flatMap(([signs = '', kind = '']) => [...signs].map((sign): [string, string] => [sign, kind])),
);
const SQUARE_NEXT = /^\ufe0f?[a-h]?[1-8]?[x×:-]?[a-h][1-8]/;
const STROKES = new Set(['\u0335', '\u0336', '\u0337', '\u0338']);
const MARK = /^\p{Mn}$/u;
const KEPT_SCRIPT = /^[\u0900-\u0dff\u0e00-\u0eff]$/u;
const INVISIBLE = /^[\p{Cf}\p{Cc}\p{Cs}\p{Cn}\p{Co}\u3164\u115f\u1160]$/u;
/** Variation selectors and enclosing marks (a keycap). */
const SELECTOR = /^(?:[\ufe00-\ufe0f]|[\u20d0-\u20f0])$/u;
const BLANK = /^[\p{Z}\n\r\t\v\f\u0085]$/u;
const EMOJI = /^\p{Extended_Pictographic}$/u;
/** White capitals on black, which have no plain form of their own in Unicode. */
const CAPITAL_BASES: readonly number[] = [0x1f150, 0x1f170];
const DIGIT_BASES: readonly number[] = [0x660, 0x6f0, 0x966, 0x9e6, 0xe50];

interface Sink {
  out: string[];
  starts: number[];
  ends: number[];
  struck: number[];
  isStriking: boolean;
  /** What a strange letter became, so that each is worked out once a text. */
  readonly known: Map<string, string>;
}

/** Folds a text; linear in its length. */
export function foldText(original: string): FoldedText {
  const isCut = original.length > LONGEST_TEXT;
  const source = isCut ? original.slice(0, LONGEST_TEXT) : original;
  if (isPlain(source)) return { text: source, starts: null, ends: null, struck: null, isCut };
  const sink: Sink = { out: [], starts: [], ends: [], struck: [], isStriking: false, known: new Map() };
  const lastTagEnd = source.lastIndexOf('>');
  let at = 0;
  while (at < source.length && sink.out.length < LONGEST_FOLDED) {
    const sign = source.charAt(at);
    if (sign === '<' && at < lastTagEnd) {
      const tag = tagAt(source, at);
      if (tag !== null) {
        if (tag.strikes !== null) sink.isStriking = tag.strikes;
        if (tag.stands !== '') put(sink, tag.stands, at, tag.end);
        at = tag.end;
        continue;
      }
    }
    if (sign === '~' && source.charAt(at + 1) === '~') {
      sink.isStriking = !sink.isStriking;
      put(sink, ' ', at, at + 2);
      at += 2;
      continue;
    }
    const entity = sign === '&' ? entityAt(source, at) : null;
    if (entity !== null) {
      for (const inner of entity.text) putSign(sink, inner, at, entity.end);
      at = entity.end;
      continue;
    }
    const point = String.fromCodePoint(source.codePointAt(at) ?? 32);
    const next = at + point.length;
    const isMan = PICTURES.has(point) && SQUARE_NEXT.test(source.slice(next, next + 6));
    putSign(sink, isMan ? (PICTURES.get(point) ?? point) : point, at, next);
    at = next;
  }
  return {
    text: sink.out.join(''),
    starts: Int32Array.from(sink.starts),
    ends: Int32Array.from(sink.ends),
    struck: sink.struck.includes(1) ? Uint8Array.from(sink.struck) : null,
    isCut: isCut || sink.out.length >= LONGEST_FOLDED,
  };
}

/** Printable ASCII without markup needs no folding: the common case, and the fast one. */
function isPlain(source: string): boolean {
  for (let at = 0; at < source.length; at += 1) {
    const code = source.charCodeAt(at);
    if (code > 126 || code < 9 || (code > 13 && code < 32)) return false;
    if (code === 38 || code === 60 || code === 126 || code === 96) return false;
  }
  return true;
}

function put(sink: Sink, text: string, start: number, end: number): void {
  for (let at = 0; at < text.length; at += 1) {
    sink.out.push(text.charAt(at));
    sink.starts.push(start);
    sink.ends.push(end);
    sink.struck.push(sink.isStriking ? 1 : 0);
  }
}

function putSign(sink: Sink, sign: string, start: number, end: number): void {
  const code = sign.codePointAt(0) ?? 32;
  if (code === 96) put(sink, ' ', start, end);
  else if (code < 127 && code >= 32) put(sink, sign, start, end);
  else if (STROKES.has(sign)) strikeLast(sink);
  else if (FIGURINE_SIGNS.has(sign)) put(sink, sign, start, end);
  else {
    const standIn = STAND_INS.get(sign);
    if (standIn !== undefined) put(sink, standIn, start, end);
    else if (BLANK.test(sign)) put(sink, sign === '\n' || sign === '\r' ? '\n' : ' ', start, end);
    else if (INVISIBLE.test(sign) || SELECTOR.test(sign)) extendLast(sink, end);
    else unfold(sink, sign, start, end);
  }
}

/** Styled and accented letters to their plain ones; digits of other scripts to ours. */
function unfold(sink: Sink, sign: string, start: number, end: number): void {
  const code = sign.codePointAt(0) ?? 32;
  const capital = CAPITAL_BASES.find((first) => code >= first && code < first + 26);
  if (capital !== undefined) {
    put(sink, String.fromCharCode(65 + code - capital), start, end);
    return;
  }
  const base = DIGIT_BASES.find((first) => code >= first && code < first + 10);
  if (base !== undefined) {
    put(sink, String(code - base), start, end);
    return;
  }
  let plain = sink.known.get(sign);
  if (plain === undefined) {
    plain = plainLetters(sign);
    sink.known.set(sign, plain);
  }
  if (plain === '') extendLast(sink, end);
  else put(sink, plain, start, end);
}

function plainLetters(sign: string): string {
  let plain = '';
  for (const part of sign.normalize('NFKD')) {
    if (STROKES.has(part)) continue;
    if (MARK.test(part) && !KEPT_SCRIPT.test(part)) continue;
    const isPicture = EMOJI.test(part) || INVISIBLE.test(part);
    plain += STAND_INS.get(part) ?? (isPicture ? ' ' : part);
  }
  return plain;
}

function strikeLast(sink: Sink): void {
  if (sink.struck.length > 0) sink.struck[sink.struck.length - 1] = 1;
}

/** An invisible sign belongs to the character before it. */
function extendLast(sink: Sink, end: number): void {
  if (sink.ends.length > 0) sink.ends[sink.ends.length - 1] = end;
}

/** The place in the original of a half-open range of the folded text. */
export function placeOf(folded: FoldedText, start: number, end: number): readonly [number, number] {
  if (folded.starts === null || folded.ends === null) return [start, end];
  const from = folded.starts[start] ?? 0;
  return [from, Math.max(from, folded.ends[end - 1] ?? from)];
}

/** A word or sign as the folded text would have it; for tables that are matched against folded text. */
export function foldWord(word: string): string {
  return foldText(word).text.toLowerCase();
}
