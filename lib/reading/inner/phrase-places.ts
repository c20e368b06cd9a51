// Where the reading of a phrase stands, and how a square or a rank said in words joins it ("pawn to king four",
// "to the eighth rank", "two squares").

import { KIND_BIT } from '#lib/rules/moves-to.ts';
import type { Lexeme } from './lexemes.ts';
import type { NamedSquare, Phrase } from './phrase.ts';
import { RANK_NOUNS } from './word-table.ts';

/** A phrase in the making: what it said, and where the reading stands. */
export interface PhraseScan {
  readonly lexemes: readonly Lexeme[];
  readonly phrase: Phrase;
  readonly start: number;
  at: number;
  preposition: NamedSquare['preposition'];
  /** "With" has been read: the man that follows is the one that moves. */
  isWith: boolean;
  /** A file named before a man or a rank. */
  file: number;
  /** First lexeme behind the last one that said something. */
  end: number;
}

/** Steps over a lexeme; one that says something moves the phrase's end. */
export function advance(scan: PhraseScan, saysSomething: boolean): true {
  scan.at += 1;
  if (saysSomething) scan.end = scan.at;
  return true;
}

/** Adds a square with the preposition before it. */
export function addSquare(
  scan: PhraseScan,
  square: Pick<NamedSquare, 'files' | 'ranks' | 'isRelative'>,
): void {
  const { phrase, preposition } = scan;
  phrase.squares.push({ ...square, preposition, isBeforeVerb: phrase.verb === null });
  scan.preposition = null;
}

/** "pawn to king four": a file by its man, a rank from the mover's side. */
export function takeDescriptor(scan: PhraseScan, kinds: number, rank: number): boolean {
  const files =
    kinds === KIND_BIT.k
      ? 0x10
      : kinds === KIND_BIT.q
        ? 0x08
        : kinds === KIND_BIT.b
          ? 0x24
          : kinds === KIND_BIT.n
            ? 0x42
            : 0x81;
  addSquare(scan, { files, ranks: 1 << rank, isRelative: true });
  scan.at += 1;
  return advance(scan, true);
}

/** A rank behind which its noun stands, or a count of squares. */
export function takeRank(scan: PhraseScan, rank: number, next: Lexeme | undefined): boolean {
  const { phrase } = scan;
  if (next?.type === 'word' && RANK_NOUNS.has(next.word) && phrase.squares.length === 0) {
    phrase.rank = rank;
    scan.at += 1;
    return advance(scan, true);
  }
  if (next?.type === 'word' && next.word === 'squares' && rank === 1 && phrase.mover !== 0) {
    phrase.stepsTwo = true;
    scan.at += 1;
    return advance(scan, true);
  }
  return false;
}
