// Where does the man of a written move come from, said behind it: "Re7 (from h7)", "Nd2 with the b-knight"?
// Rule R2: of two men that the move fits, the one named is meant; where it does not fit, the words say nothing.

import { ANY_KIND } from '#lib/rules/moves-to.ts';
import type { Shape } from '../shape.ts';
import { fileOf } from './lexeme-tests.ts';
import type { Lexeme } from './lexemes.ts';
import type { AnyLexeme } from './phrase.ts';
import { FILE_NOUNS, senseIn, WITH_WORDS } from './word-table.ts';

interface Origin {
  readonly files: number;
  readonly ranks: number;
  readonly kinds: number;
  readonly end: number;
}

/** The move at `at` with its origin, and the first lexeme behind it; null where none is named. */
export function originBehind(
  lexemes: readonly Lexeme[],
  at: number,
): { readonly lexeme: AnyLexeme; readonly end: number } | null {
  const move = lexemes[at];
  const step = move?.type === 'move' && move.ways.length === 1 ? move.ways[0]?.[0] : undefined;
  if (move?.type !== 'move' || step === undefined) return null;
  let next = at + 1;
  const sign = lexemes[next];
  const isOpen = sign?.type === 'open';
  if (isOpen || (sign?.type === 'sign' && sign.sign === ',')) next += 1;
  const word = wordAt(lexemes, next);
  const isFrom = word !== null && senseIn(word, 'from') !== null;
  if (isFrom || (word !== null && WITH_WORDS.has(word))) next += 1;
  else if (!isOpen) return null;
  while (senseIn(wordAt(lexemes, next) ?? '', 'article') !== null && fileOf(lexemes[next]) < 0) next += 1;
  // "Nd2(b1)", without a blank; with one, a square in brackets is a move.
  const isGlued = isOpen && sign?.start === move.end;
  const origin =
    (isOpen ? fileInBrackets(lexemes, next) : null) ?? originAt(lexemes, next, isFrom || isGlued);
  if (origin === null || (isOpen && lexemes[origin.end]?.type !== 'close')) return null;
  if (wordAt(lexemes, origin.end) !== null && senseIn(wordAt(lexemes, origin.end) ?? '', 'to') !== null)
    return null;
  const shapes = narrowed(step.shapes, origin);
  const end = origin.end + (isOpen ? 1 : 0);
  const last = lexemes[end - 1];
  if (shapes.length === step.shapes.length || last === undefined) return null;
  return { lexeme: { ...move, end: last.end, ways: [[{ ...step, shapes }]], isBareSquare: false }, end };
}

function wordAt(lexemes: readonly Lexeme[], at: number): string | null {
  const lexeme = lexemes[at];
  return lexeme?.type === 'word' ? lexeme.word : null;
}

/** "Re7 (h)". */
function fileInBrackets(lexemes: readonly Lexeme[], at: number): Origin | null {
  const file = fileOf(lexemes[at]);
  if (file < 0 || lexemes[at + 1]?.type !== 'close') return null;
  return { files: 1 << file, ranks: 255, kinds: ANY_KIND, end: at + 1 };
}

/** "h7", "f3 knight", "e-rook", "h-file", "rook on h7". */
function originAt(lexemes: readonly Lexeme[], start: number, isFrom: boolean): Origin | null {
  const square = squareAt(lexemes, start);
  if (square !== null) {
    const piece = senseIn(wordAt(lexemes, start + 1) ?? '', 'piece');
    if (piece !== null) return { ...square, kinds: piece.kinds, end: start + 2 };
    return isFrom ? { ...square, kinds: ANY_KIND, end: start + 1 } : null;
  }
  const file = fileOf(lexemes[start]);
  if (file >= 0) {
    const sign = lexemes[start + 1];
    const next = sign?.type === 'sign' && sign.sign === '-' ? start + 2 : start + 1;
    const noun = wordAt(lexemes, next) ?? '';
    const piece = senseIn(noun, 'piece');
    if (piece === null && !FILE_NOUNS.has(noun)) return null;
    return { files: 1 << file, ranks: 255, kinds: piece?.kinds ?? ANY_KIND, end: next + 1 };
  }
  const piece = senseIn(wordAt(lexemes, start) ?? '', 'piece');
  if (piece === null) return null;
  const preposition = wordAt(lexemes, start + 1) ?? '';
  const isPlaced = senseIn(preposition, 'on') !== null || senseIn(preposition, 'from') !== null;
  const stands = squareAt(lexemes, isPlaced ? start + 2 : start + 1);
  return stands === null ? null : { ...stands, kinds: piece.kinds, end: start + (isPlaced ? 3 : 2) };
}

function squareAt(
  lexemes: readonly Lexeme[],
  at: number,
): { readonly files: number; readonly ranks: number } | null {
  const lexeme = lexemes[at];
  const shape = lexeme?.type === 'move' && lexeme.isBareSquare ? lexeme.ways[0]?.[0]?.shapes[0] : undefined;
  return shape === undefined || shape.to < 0 ? null : { files: shape.toFiles, ranks: shape.toRanks };
}

/** The shapes with the origin first, then as they were for a little more. */
function narrowed(shapes: readonly Shape[], { files, ranks, kinds }: Origin): readonly Shape[] {
  const fitting = shapes
    .filter(
      (shape) =>
        (shape.kinds & kinds) !== 0 && (shape.fromFiles & files) !== 0 && (shape.fromRanks & ranks) !== 0,
    )
    .map((shape) => ({
      ...shape,
      kinds: shape.kinds & kinds,
      fromFiles: shape.fromFiles & files,
      fromRanks: shape.fromRanks & ranks,
    }));
  if (fitting.length === 0) return shapes;
  return [...fitting, ...shapes.map((shape) => ({ ...shape, cost: shape.cost + 1 }))];
}
