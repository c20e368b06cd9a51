// The words that the board says, handed over by the page in its own language.

import type { Position, Square } from '#lib/rules/position.ts';
import { kindOf, sideOf, squareName } from '#lib/rules/position.ts';

/** Sentences with {places} to fill. `wk` to `bp` are the twelve men: "white king". */
export type BoardWords = Readonly<Record<string, string>>;

/** Fills a sentence; a missing one shows its key, so that a slip is seen and nothing breaks. */
export function fill(words: BoardWords, key: string, places: Readonly<Record<string, string>> = {}): string {
  return (words[key] ?? key).replace(/\{(\w+)\}/g, (_, name: string) => places[name] ?? '');
}

/** The name of a square's man, or null where it is empty. */
export function manName(words: BoardWords, position: Position, square: Square): string | null {
  const man = position.board[square] ?? 0;
  const side = sideOf(man);
  return side === null ? null : fill(words, `${side}${kindOf(man)}`);
}

/** The name of a cell as it is read out: "e1, white rook", "e4, empty". */
export function cellName(words: BoardWords, position: Position, square: Square): string {
  const man = manName(words, position, square);
  return `${squareName(square)}, ${man ?? fill(words, 'empty')}`;
}

/** Words from an attribute; an empty set where it is not what it should be. */
export function parseWords(text: string | undefined): BoardWords {
  const parsed: unknown = JSON.parse(text || '{}');
  if (typeof parsed !== 'object' || parsed === null) return {};
  return Object.fromEntries(Object.entries(parsed).map(([key, value]) => [key, String(value)]));
}
