// Which men can a letter stand for, and in which languages? The tables of lib/words, turned round.

import { KIND_BIT } from '#lib/rules/moves-to.ts';
import { KINDS } from '#lib/rules/position.ts';
import { FIGURINES, PIECE_LETTERS, type PieceLetters, SPELLED_MEN } from '#lib/words/piece-letters.ts';
import { foldText } from './fold-text.ts';

/** Languages with the same letters share a bit; at most 32. The rarity is that of the most usual one. */
export interface LanguageGroup {
  readonly bit: number;
  readonly rarity: number;
  readonly tags: readonly string[];
}

/** One thing a letter can mean. */
export interface LetterSense {
  readonly kindBit: number;
  readonly langs: number;
  /** A Latin letter typed for a Cyrillic one: counts only in a text with Cyrillic letters. */
  readonly needsCyrillic: boolean;
}

/** A spelling in capitals and what it can mean. */
export interface Spelling {
  readonly sign: string;
  readonly senses: readonly LetterSense[];
}

const CYRILLIC = /[\u0400-\u04ff]/;
/** Tags of the tables that are written in Cyrillic. */
const CYRILLIC_TAGS = new Set(['ru', 'uk', 'bg', 'sr']);

function groupKey(table: PieceLetters): string {
  return JSON.stringify(table.letters);
}

/** The groups, English first. */
export const LANGUAGES: readonly LanguageGroup[] = buildGroups();

function buildGroups(): LanguageGroup[] {
  const byKey = new Map<string, PieceLetters[]>();
  for (const table of PIECE_LETTERS) {
    const key = groupKey(table);
    byKey.set(key, [...(byKey.get(key) ?? []), table]);
  }
  if (byKey.size > 32) throw new Error('More than 32 sets of letters do not fit one mask');
  return [...byKey.values()].map((tables, index) => ({
    bit: 1 << index,
    rarity: Math.min(...tables.map(({ rarity }) => rarity)),
    tags: tables.map(({ tag }) => tag),
  }));
}

/** The mask of English. */
export const ENGLISH = LANGUAGES[0]?.bit ?? 1;

const RARITY_OF_BIT: readonly number[] = LANGUAGES.map(({ rarity }) => rarity);

/** The lowest rarity among the languages of a mask; 0 for all. */
export function rarityOf(langs: number): number {
  if ((langs & ENGLISH) !== 0) return 0;
  let lowest = 4;
  for (let index = 1; index < RARITY_OF_BIT.length; index += 1) {
    if (((langs >>> index) & 1) === 1) lowest = Math.min(lowest, RARITY_OF_BIT[index] ?? 4);
  }
  return lowest;
}

/** The languages of rarity 3, as a mask. */
export const RARE_LANGUAGES = LANGUAGES.reduce(
  (mask, { bit, rarity }) => (rarity === 3 ? mask | bit : mask),
  0,
);

/** Spellings by their first sign in capitals, longest first. */
export const SPELLINGS: ReadonlyMap<string, readonly Spelling[]> = buildSpellings();

function buildSpellings(): Map<string, Spelling[]> {
  const senses = new Map<string, LetterSense[]>();
  const add = (sign: string, sense: LetterSense): void => {
    senses.set(sign, [...(senses.get(sign) ?? []), sense]);
  };
  for (const group of LANGUAGES) {
    const table = PIECE_LETTERS.find(({ tag }) => tag === group.tags[0]);
    if (table === undefined) continue;
    const isCyrillic = CYRILLIC_TAGS.has(table.tag);
    for (const kind of KINDS) {
      for (const sign of table.letters[kind]) {
        const folded = foldText(sign).text.toUpperCase();
        const needsCyrillic = isCyrillic && !CYRILLIC.test(folded);
        add(folded, { kindBit: KIND_BIT[kind], langs: group.bit, needsCyrillic });
      }
    }
  }
  for (const kind of KINDS) {
    for (const sign of [...FIGURINES[kind], ...SPELLED_MEN[kind]])
      add(foldText(sign).text.toUpperCase(), { kindBit: KIND_BIT[kind], langs: -1, needsCyrillic: false });
  }
  const byFirst = new Map<string, Spelling[]>();
  for (const [sign, meant] of senses) {
    const first = sign.charAt(0);
    byFirst.set(first, [...(byFirst.get(first) ?? []), { sign, senses: joined(meant) }]);
  }
  for (const list of byFirst.values()) list.sort((one, two) => two.sign.length - one.sign.length);
  return byFirst;
}

/** One sense a kind, languages joined. */
function joined(senses: readonly LetterSense[]): LetterSense[] {
  const out: LetterSense[] = [];
  for (const sense of senses) {
    const same = out.findIndex(
      ({ kindBit, needsCyrillic }) => kindBit === sense.kindBit && needsCyrillic === sense.needsCyrillic,
    );
    const found = out[same];
    if (found === undefined) out.push(sense);
    else out[same] = { ...found, langs: found.langs | sense.langs };
  }
  return out;
}
