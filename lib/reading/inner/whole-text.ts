// What can be said of a text as a whole: its letters, whom it addresses (rule P4), whether its source cut
// it (rule R16).

import { type FoldedText, placeOf } from './fold-text.ts';
import { RARE_LANGUAGES, SPELLINGS } from './letters.ts';
import type { ScanContext } from './scan-compact.ts';

/** Letters that Turkish alone writes, and words: they are folded away, but say which letters the men have. */
const TURKISH = /[ğĞıİşŞ]|(?<!\p{L})(?:önce|sonra|hamle|beyaz|siyah|oynar)(?!\p{L})/u;

/** "W1" and "B1" before moves number them by side; one alone may be a square. */
const SIDE_NUMBERS = /(?<![\p{L}\d])[WB]1(?![\p{L}\d]).*(?<![\p{L}\d])[WB]1(?![\p{L}\d])/su;

/** What the scanners need to know of the whole text; `original` is the text before it was folded. */
export function scanContextOf(text: string, original: string): ScanContext {
  return {
    hasCyrillic: /[\u0400-\u04ff]/.test(text),
    isAllCapitals: !/[a-z]/.test(text) && /[A-Z]/.test(text),
    hasCapitalMen: /[KQRBN][a-h1-8]?[x:-]?[a-h][1-8]/.test(text),
    allowsRare: TURKISH.test(original) || needsRareLetters(text),
    hasSideNumbers: text.includes('W1') && text.includes('B1') && SIDE_NUMBERS.test(text),
  };
}

/**
 * True where the capitals before squares are the letters of no usual language together: only then may a
 * rare one claim a letter that others have too.
 */
function needsRareLetters(text: string): boolean {
  let shared = -1;
  for (const match of text.matchAll(/(?<![\p{L}\d])(\p{Lu})[a-h]?[x:]?[a-h][1-8]/gu)) {
    const spelling = SPELLINGS.get(match[1] ?? '')?.find(({ sign }) => sign.length === 1);
    if (spelling === undefined) continue;
    shared &= spelling.senses.reduce((langs, sense) => langs | sense.langs, 0);
  }
  return (shared & ~RARE_LANGUAGES) === 0;
}

const CUT_MARKS = [
  '... read more',
  '... see more',
  '... show more',
  '... more',
  '... mehr anzeigen',
  '... mehr',
  '... weiterlesen',
  '... ver mas',
  '... leer mas',
  '... voir plus',
  '... lire la suite',
  '... altro',
  '... mostra altro',
  '... ver mais',
  '... еще',
  '... читать дальше',
  '... devamini gor',
  '... daha fazla',
  '[...]',
  '(...)',
  '(read more)',
  '(more)',
];

/** Rule R16: the text ends in a mark by which sources say that they cut it. */
export function isCutBySource(text: string): boolean {
  const end = text.slice(-60).toLowerCase().replace(/\s+/g, ' ').trim();
  if (end.endsWith('...')) return true;
  // "... [mehr]", "... (more)": the mark in brackets.
  const plain = end.replace(/[[\]()]/g, '');
  return CUT_MARKS.some(
    (mark) => end.endsWith(mark) || [mark, mark.replace('... ', '...')].some((one) => plain.endsWith(one)),
  );
}

const SAME_AS =
  /^\s*(?:@|(?:in )?(?:reply|answer) to |replying to |antwort (?:an|auf) |re[sp]+[ou]\p{L}+ a |same (?:as|here|for me)|(?:like|as|what) \p{L}+ said|i agree with|agree with|agreed|\+1|ditto|ich stimme|(?:wie|was) \p{L}+ (?:sagt|schon)|(?:die |das )?(?:gleiche|dasselbe|selbe)\p{L}* (?:\p{L}+ )?wie|lo mismo que|igual (?:que|a)|(?:la )?misma (?:\p{L}+ )?que|comme \p{L}+ a dit|(?:la )?(?:pareil|meme)(?: \p{L}+)? que|(?:la )?(?:stessa|stesso)(?: \p{L}+)?(?: \p{L}+)? (?:di|come)|(?:a )?mesm[ao](?: \p{L}+)? (?:d[aoe]|que)|то же|так же,? как|как (?:у|и) |согласен с|согласна с|\p{L}+ (?:ile|gibi) (?:ayni|dusun))/iu;

/** Rule P4: the text begins by addressing somebody, or says no more than somebody else did. */
export function isAddressed(text: string): boolean {
  return SAME_AS.test(text.slice(0, 80));
}

const SECOND_PERSON =
  /(?<!\p{L})(?:you|your|yours|ur|du|dein|deine|euch|te|tu|ti|tuo|tua|ton|ta|vous|votre|usted|voce|seu|ты|тебя|твой|вы|sen|senin)(?!\p{L})/iu;

/** "@lisa you forgot Kd1": somebody is told something, in the second person. */
export function speaksToSomebody(text: string): boolean {
  return isAddressed(text) && SECOND_PERSON.test(text.slice(0, 300));
}

/** Longest run that two hyphens strike out, in characters. */
const LONGEST_STRIKE = 200;

/**
 * Rule R3: some sites strike out what stands between two hyphens ("-Rh5- Qxh7+"). Only at the start of a line,
 * where it can be no remark between dashes; `original` tells hyphens from dashes. The marks of `folded` with these added.
 */
export function struckByHyphens(folded: FoldedText, original: string): Uint8Array | null {
  const { text } = folded;
  let struck: Uint8Array | null = folded.struck;
  for (let at = text.indexOf('-'); at >= 0; at = text.indexOf('-', at + 1)) {
    if (!isHyphen(folded, original, at) || !/[\p{L}\d]/u.test(text.charAt(at + 1))) continue;
    if (at > 0 && text.charAt(at - 1) !== '\n') continue;
    const end = strikeEnd(text, at);
    if (end < 0 || !isHyphen(folded, original, end)) continue;
    struck = struck === folded.struck ? Uint8Array.from(struck ?? new Uint8Array(text.length)) : struck;
    struck?.fill(1, at, end + 1);
    at = end;
  }
  return struck;
}

function isHyphen(folded: FoldedText, original: string, at: number): boolean {
  const [start] = placeOf(folded, at, at + 1);
  return original.charAt(start) === '-';
}

/** The first hyphen behind a word and before a blank in the same line, or -1. */
function strikeEnd(text: string, start: number): number {
  for (let at = start + 2; at < start + LONGEST_STRIKE && at < text.length; at += 1) {
    const sign = text.charAt(at);
    if (sign === '\n') return -1;
    if (sign !== '-' || text.charAt(at - 1) === ' ') continue;
    const next = text.charAt(at + 1);
    if (next === '' || ' \n.,;:!?'.includes(next)) return at;
  }
  return -1;
}

const HALF_MOVE = /(?<![\p{L}\d])[KQRBN](?![x:]?[a-h][1-8](?!\d))(?:[x:?][x?:#+\-1-8a-h]*)(?![\p{L}\d])/u;
/** "R8", "Rd": a whole text that stops in the middle of a move. */
const ALONE = /^\s*[KQRBN](?:[a-h]{0,2}[1-8]?|[x:]?[a-z]\d)[x#+!?.\s]*$/;
const BARE_NUMBER = /^\s*\d{1,3}\s*\.[\s.?!-]*$/;

/** Where a text without any readable move still begins one ("R?8", "1. ..."): rule O, `unreadable`. */
export function halfMove(text: string): { readonly start: number; readonly end: number } | null {
  const half = HALF_MOVE.exec(text) ?? ALONE.exec(text);
  if (half !== null) return { start: half.index, end: half.index + half[0].length };
  return BARE_NUMBER.test(text) ? { start: 0, end: text.length } : null;
}
