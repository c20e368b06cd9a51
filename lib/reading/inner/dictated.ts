// Which squares are dictated in words ("rook dee eight", "torre hache cinco", "queen h for mate")? Files by the
// names of their letters, ranks as a phone hears them.

import { KIND_BIT } from '#lib/rules/moves-to.ts';
import { shapeOf } from '../shape.ts';
import type { Lexeme, MoveLexeme } from './lexemes.ts';
import { FILE_WORDS, senseIn } from './word-table.ts';

/** Ranks as a phone hears them behind a file. */
const MISHEARD: ReadonlyMap<string, number> = new Map([
  ['for', 3],
  ['fore', 3],
  ['ate', 7],
]);
/** "The queens see two rooks": a verb of prose behind a man. */
const VERBS = new Set(['see']);

/** The rank that the lexeme at `at` says behind a file: 0 to 7, or -1. */
export function rankSaid(lexemes: readonly Lexeme[], at: number): number {
  const lexeme = lexemes[at];
  if (lexeme?.type === 'number') return lexeme.n <= 8 ? lexeme.n - 1 : -1;
  if (lexeme?.type !== 'word') return -1;
  const rank = senseIn(lexeme.word, 'rank');
  if (rank !== null) return rank.rank;
  const next = lexemes[at + 1];
  // "The rook for the win" names no rank.
  const isProse = next?.type === 'word' && senseIn(next.word, 'article') !== null;
  return isProse ? -1 : (MISHEARD.get(lexeme.word) ?? -1);
}

/** The lexemes with a named file and the rank behind it joined to one square, where a man or a verb leads to it. */
export function withDictatedSquares(lexemes: readonly Lexeme[]): readonly Lexeme[] {
  if (!lexemes.some((one) => one.type === 'word' && FILE_WORDS.has(one.word))) return lexemes;
  const out: Lexeme[] = [];
  for (let at = 0; at < lexemes.length; at += 1) {
    const lexeme = lexemes[at];
    const square = squareAt(lexemes, at);
    if (square !== null) at += 1;
    if (square !== null) out.push(square);
    else if (lexeme !== undefined) out.push(lexeme);
  }
  return out;
}

function squareAt(lexemes: readonly Lexeme[], at: number): MoveLexeme | null {
  const [before, file, rank] = [lexemes[at - 1], lexemes[at], lexemes[at + 1]];
  if (file?.type !== 'word' || rank === undefined || before?.type !== 'word') return null;
  const fileIndex = FILE_WORDS.get(file.word);
  const rankIndex = rankSaid(lexemes, at + 1);
  if (fileIndex === undefined || rankIndex < 0) return null;
  const isBehindMan = senseIn(before.word, 'piece') !== null && !VERBS.has(file.word);
  const leads = (['take', 'to', 'on', 'from'] as const).some((role) => senseIn(before.word, role) !== null);
  if (!isBehindMan && !leads) return null;
  const { start } = file;
  const { end } = rank;
  const shape = shapeOf({ kinds: KIND_BIT.p, toFiles: 1 << fileIndex, toRanks: 1 << rankIndex });
  return {
    type: 'move',
    start,
    end,
    ways: [[{ shapes: [shape], start, end }]],
    strength: 'square',
    isBareSquare: true,
    isQuestioned: false,
    isExclaimed: false,
  };
}
