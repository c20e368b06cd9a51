// What stands behind a written move: the new man, "e.p.", check and mate signs, glyphs, NAGs. Only the new
// man and a question mark mean anything to the reading (rules R3, R9, R11).

import { KIND_BIT } from '#lib/rules/moves-to.ts';
import { KINDS, type Kind } from '#lib/rules/position.ts';
import { type LetterSense, RARE_LANGUAGES, SPELLINGS } from './letters.ts';
import { fileAt, isCapital, isDigitAt, isLetterAt, isWordAt, rankAt } from './signs.ts';
import { senseIn } from './word-table.ts';

/** The end of a written move. */
export interface Tail {
  readonly end: number;
  /** Kinds of the new man with the languages that say so; empty where none is named. */
  readonly promotions: readonly { readonly kind: Kind; readonly langs: number }[];
  /** "?" or "??" without "!": the writer turns the move down (rule R3). */
  readonly isQuestioned: boolean;
  readonly isExclaimed: boolean;
  readonly isPassant: boolean;
}

/** Kings and pawns: "b8 şah" is a check, not a king. */
const NEVER_PROMOTED = KIND_BIT.k | KIND_BIT.p;

/** Reads the tail from `at`; `canPromote` says that a man's letter here is a new man. */
export function scanTail(text: string, at: number, canPromote: boolean): Tail {
  const promotion = canPromote ? promotionAt(text, at) : null;
  let end = promotion?.end ?? at;
  const passant = passantEnd(text, end);
  end = Math.max(end, passant);
  let marks = '';
  for (let limit = end + 12; end < limit; end += 1) {
    const sign = text.charAt(end);
    if (sign === '$' && isDigitAt(text, end + 1)) {
      const nag = nagAt(text, end + 1);
      marks += nag.mark;
      end = nag.end - 1;
    } else if ('+#!?'.includes(sign) && sign !== '') marks += sign;
    else if (isTrailingCapture(text, end) || (marks.endsWith('!') && isSlipOfShift(text, end))) continue;
    else break;
  }
  // " ?" and " $2" set off by a blank belong to the move as well.
  if (marks === '' && text.charAt(end) === ' ' && '?!$'.includes(text.charAt(end + 1))) {
    const next = scanTail(text, end + 1, false);
    if (next.end > end + 1) return { ...next, promotions: promotion?.senses ?? [], isPassant: passant > 0 };
  }
  return {
    end,
    promotions: promotion?.senses ?? [],
    isQuestioned: marks.includes('?') && !marks.includes('!'),
    isExclaimed: marks.includes('!') && !marks.includes('?'),
    isPassant: passant > 0,
  };
}

/** "Qf7x", "Qf7:": the sign behind, and the Russian mate sign. */
function isTrailingCapture(text: string, at: number): boolean {
  const sign = text.charAt(at);
  if (sign === 'x' || sign === 'X' || sign === 'х' || sign === 'Х') return !isWordAt(text, at + 1);
  return sign === ':' && !isWordAt(text, at + 1) && text.charAt(at + 1) !== ' ' && at + 1 < text.length;
}

/** "Qe8!!!1": the key of the exclamation mark without its shift. */
function isSlipOfShift(text: string, at: number): boolean {
  return text.charAt(at) === '1' && /^1+(?![\d.)\p{L}])/u.test(text.slice(at, at + 12));
}

function nagAt(text: string, at: number): { readonly mark: string; readonly end: number } {
  let end = at;
  while (end < at + 3 && isDigitAt(text, end)) end += 1;
  const code = Number(text.slice(at, end));
  return { mark: code === 2 || code === 4 ? '?' : code === 1 || code === 3 ? '!' : '', end };
}

function passantEnd(text: string, at: number): number {
  const match = /^ ?\(?e\.? ?p\.?\)?(?![a-z0-9])/i.exec(text.slice(at, at + 9));
  return match === null ? 0 : at + match[0].length;
}

interface Promotion {
  readonly end: number;
  readonly senses: readonly { readonly kind: Kind; readonly langs: number }[];
}

/** "=Q", "(Q)", "/Q", ":Q", "Q", " = Q", "=Dame", "Q" after a blank. */
function promotionAt(text: string, at: number): Promotion | null {
  let cursor = at;
  while (cursor < at + 2 && text.charAt(cursor) === ' ') cursor += 1;
  const isSpaced = cursor > at;
  // "Bxc8 :D" laughs; a pawn becomes a queen all the same.
  if (isSpaced && /^:D(?![\p{L}\d])/u.test(text.slice(cursor, cursor + 3))) return null;
  let isOpen = false;
  let hasSign = false;
  for (let limit = cursor + 3; cursor < limit; cursor += 1) {
    const sign = text.charAt(cursor);
    if (sign === '(' && !isOpen) isOpen = true;
    else if ('=/:'.includes(sign) && sign !== '') hasSign = true;
    else break;
  }
  if (hasSign && text.charAt(cursor) === ' ') cursor += 1;
  // "e8-N": a hyphen, if the letter begins no move.
  const dash = hasSign || isOpen ? null : /^-{1,2}>? ?(?=\p{Lu})/u.exec(text.slice(cursor, cursor + 5));
  if (dash !== null) {
    const hyphened = manAt(text, cursor + dash[0].length, { hasSign: false, isGlued: !isSpaced });
    return hyphened === null || '-x:('.includes(text.charAt(hyphened.end) || ' ') ? null : hyphened;
  }
  const man = manAt(text, cursor, { hasSign, isGlued: !isSpaced });
  if (man === null) return null;
  if (isSpaced && !hasSign && !isOpen && !isCapital(text.charAt(cursor)) && man.end - cursor < 3) return null;
  if (isOpen && text.charAt(man.end) !== ')') return null;
  // "Bxc8 B) Kh8": a letter before a lone bracket is a label.
  if (isSpaced && !hasSign && !isOpen && text.charAt(man.end) === ')') return null;
  // "PxP P-K3": the letter begins the next move.
  if (isSpaced && !hasSign && !isOpen && '-x:='.includes(text.charAt(man.end) || ' ')) return null;
  return { end: isOpen ? man.end + 1 : man.end, senses: man.senses };
}

/** A man's letter, figurine or word that does not begin a move of its own. */
function manAt(
  text: string,
  at: number,
  { hasSign, isGlued }: { readonly hasSign: boolean; readonly isGlued: boolean },
): Promotion | null {
  let end = at;
  while (end < at + 14 && isLetterAt(text, end)) end += 1;
  const word = text.slice(at, end).toLowerCase();
  const sense = word.length > 2 ? senseIn(word, 'piece') : null;
  const named = sense !== null && (sense.kinds & NEVER_PROMOTED) === 0 ? sense : null;
  if (named !== null && (hasSign || !(text.charAt(end) === ' ' && startsSquare(text, end + 1)))) {
    return {
      end,
      senses: KINDS.filter((kind) => KIND_BIT[kind] === named.kinds).map((kind) => ({ kind, langs: -1 })),
    };
  }
  for (const spelling of SPELLINGS.get(text.charAt(at).toUpperCase()) ?? []) {
    const stop = at + spelling.sign.length;
    if (text.slice(at, stop).toUpperCase() !== spelling.sign) continue;
    // Behind a sign the letter is the new man, whatever comes next: "c8=Q d5", "a8=RKg6", and so is one
    // glued to the square before a blank: "a7a8n h7h8". "a8 Rg8" goes on with a rook.
    if (!hasSign && (isWordAt(text, stop) || startsSquare(text, stop))) continue;
    if (isLetterAt(text, stop) && !isCapital(text.charAt(stop)) && !startsSquare(text, stop)) continue;
    if (!hasSign && !isGlued && startsSquare(text, stop + 1)) continue;
    const senses = spelling.senses
      .filter(({ needsCyrillic }) => !needsCyrillic)
      .map((sense) => ({ ...sense, langs: sense.langs === -1 ? -1 : sense.langs & ~RARE_LANGUAGES }))
      .filter(({ langs }) => langs !== 0);
    return { end: stop, senses: senses.flatMap(kindOfSense) };
  }
  return null;
}

function kindOfSense({ kindBit, langs }: LetterSense): { kind: Kind; langs: number }[] {
  return KINDS.filter((kind) => KIND_BIT[kind] === kindBit && kind !== 'p').map((kind) => ({ kind, langs }));
}

function startsSquare(text: string, at: number): boolean {
  return fileAt(text, at, true) >= 0 && rankAt(text, at + 1) >= 0;
}
