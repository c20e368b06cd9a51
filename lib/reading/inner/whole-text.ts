// What can be said of a text as a whole: its letters, whom it addresses (rule P4), whether its source cut
// it (rule R16).

import { RARE_LANGUAGES, SPELLINGS } from './letters.ts';
import type { ScanContext } from './scan-compact.ts';

/** What the scanners need to know of the whole text. */
export function scanContextOf(text: string): ScanContext {
  return {
    hasCyrillic: /[\u0400-\u04ff]/.test(text),
    isAllCapitals: !/[a-z]/.test(text) && /[A-Z]/.test(text),
    hasCapitalMen: /[KQRBN][a-h1-8]?[x:-]?[a-h][1-8]/.test(text),
    allowsRare: needsRareLetters(text),
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
  return CUT_MARKS.some((mark) => end.endsWith(mark) || end.endsWith(mark.replace('... ', '...')));
}

const SAME_AS =
  /^\s*(?:@|same as|same here|like \p{L}+ said|as \p{L}+ said|i agree with|agree with|agreed|\+1|ich stimme|wie \p{L}+ sagt|lo mismo que|igual que|comme \p{L}+ a dit)/iu;

/** Rule P4: the text begins by addressing somebody, or says no more than somebody else did. */
export function isAddressed(text: string): boolean {
  return SAME_AS.test(text.slice(0, 80));
}

const HALF_MOVE = /(?<![\p{L}\d])[KQRBN](?:[x:?][x?:#+\-1-8a-h]*)(?![\p{L}\d])/u;
/** "R8", "Rd": a whole text that stops in the middle of a move. */
const ALONE = /^\s*[KQRBN][a-h]?[1-8]?[x#+!?.\s]*$/;
const BARE_NUMBER = /^\s*\d{1,3}\s*\.[\s.?!-]*$/;

/** Where a text without any readable move still begins one ("R?8", "1. ..."): rule O, `unreadable`. */
export function halfMove(text: string): { readonly start: number; readonly end: number } | null {
  const half = HALF_MOVE.exec(text) ?? ALONE.exec(text);
  if (half !== null) return { start: half.index, end: half.index + half[0].length };
  return BARE_NUMBER.test(text) ? { start: 0, end: text.length } : null;
}
