// What is the lexeme beside a phrase: a verb, a word of promotion, a file's letter?

import type { Lexeme } from './lexemes.ts';
import { fileAt, rankAt } from './signs.ts';
import { FILE_WORDS, senseIn } from './word-table.ts';

/** This very word. */
export function isWord(lexeme: Lexeme | undefined, word: string): boolean {
  return lexeme?.type === 'word' && lexeme.word === word;
}

/** A word of promotion. */
export function isPromoting(lexeme: Lexeme | undefined): boolean {
  return lexeme?.type === 'word' && senseIn(lexeme.word, 'promote') !== null;
}

/** A verb, or the square itself, as the next word of a phrase. */
export function isVerb(lexeme: Lexeme | undefined): boolean {
  if (lexeme?.type === 'move' && lexeme.isBareSquare) return true;
  return isTaking(lexeme) || (lexeme?.type === 'word' && lexeme.word === 'to');
}

/** A word that means "takes". */
export function isTaking(lexeme: Lexeme | undefined): boolean {
  return lexeme?.type === 'word' && senseIn(lexeme.word, 'take') !== null;
}

/** The file of a lone letter or of a dictated name; -1 for other words. */
export function fileOf(lexeme: Lexeme | undefined): number {
  if (lexeme?.type !== 'word') return -1;
  if (lexeme.word.length === 1) {
    const file = fileAt(lexeme.word, 0, false);
    return file >= 0 && rankAt(lexeme.word, 1) < 0 ? file : -1;
  }
  return FILE_WORDS.get(lexeme.word) ?? -1;
}

const WING_NOUNS = new Set(['side', 'wing', 'seite']);

/** A word of castling, or the side before it ("short side castle"). */
export function isCastlingBehind(lexemes: readonly Lexeme[], at: number): boolean {
  const [first, second] = [lexemes[at], lexemes[at + 1]];
  const word = first?.type === 'word' && WING_NOUNS.has(first.word) ? second : first;
  return word?.type === 'word' && senseIn(word.word, 'castle') !== null;
}
