// Rule R9: is the new man named in the words behind the square?

import { KIND_BIT } from '#lib/rules/moves-to.ts';
import { KINDS } from '#lib/rules/position.ts';
import { CONNECTORS } from './between.ts';
import type { Lexeme } from './lexemes.ts';
import type { AnyLexeme } from './phrase.ts';
import { senseIn, sensesOf } from './word-table.ts';

const WITH = new Set(['mit', 'con', 'avec', 'com', 'met', 'als', 'se', 'si', 'sich']);

/** Behind a comma or a dash only a verb of promotion goes on; inside a compound any word does. */
function goesOn(lexeme: Lexeme | undefined, isInside: boolean): boolean {
  return lexeme?.type === 'word' && (isInside || senseIn(lexeme.word, 'promote') !== null);
}

/** "a8 and becomes a rook": the new man named in the words behind the square. */
export function promotionBehind(
  lexemes: readonly Lexeme[],
  at: number,
): { readonly lexeme: AnyLexeme; readonly end: number } | null {
  const move = lexemes[at];
  if (move?.type !== 'move' || move.ways.length !== 1) return null;
  const step = move.ways[0]?.[0];
  const shape = step?.shapes[0];
  if (step === undefined || shape === undefined) return null;
  if (shape.kinds !== KIND_BIT.p || shape.promotion !== null || (shape.toRanks & ~0x81) !== 0) return null;
  let hasVerb = false;
  for (let next = at + 1; next < at + 7; next += 1) {
    const lexeme = lexemes[next];
    // "e8, promoting to a rook", "sous-promotion".
    if (lexeme?.type === 'sign' && ',-'.includes(lexeme.sign) && goesOn(lexemes[next + 1], next > at + 1))
      continue;
    if (lexeme?.type !== 'word') return null;
    const piece = senseIn(lexeme.word, 'piece');
    if (piece !== null && hasVerb) {
      const men = KINDS.filter((kind) => (piece.kinds & KIND_BIT[kind]) !== 0);
      const shapes = men.map((promotion) => ({ ...shape, promotion }));
      const lexemeWithMan: AnyLexeme = {
        ...move,
        end: lexeme.end,
        ways: [[{ ...step, shapes, end: lexeme.end }]],
        strength: 'phrase',
        isBareSquare: false,
        isTypo: false,
        isVerbless: false,
        isMoverless: false,
      };
      return { lexeme: lexemeWithMan, end: next + 1 };
    }
    if (senseIn(lexeme.word, 'promote') !== null) hasVerb = true;
    else if (
      piece !== null ||
      (sensesOf(lexeme.word).length === 0 && !CONNECTORS.has(lexeme.word) && !WITH.has(lexeme.word))
    )
      return null;
  }
  return null;
}
