// Which letters each language writes for the men. The reader of viewers' texts takes them all in; the
// pages write a move in the viewer's own.

import type { Kind } from '#lib/rules/position.ts';

/** The letters of one language. Several signs for a kind are spellings of the same letter, the usual one first. */
export interface PieceLetters {
  /** BCP 47 tag; `x-` where letters are a custom of a trade and of no language. */
  readonly tag: string;
  readonly name: string;
  readonly letters: Readonly<Record<Kind, readonly string[]>>;
  /**
   * How far the table may claim a letter that English has too: 0 English, 1 widely written, 2 rarely
   * met in comments, 3 only beside a letter that English does not have.
   */
  readonly rarity: 0 | 1 | 2 | 3;
  /** `pgn`: the language table of the PGN standard of 1994; `memory`: written down from memory, no source. */
  readonly source: 'pgn' | 'memory';
}

type Row = readonly [tag: string, name: string, rarity: 0 | 1 | 2 | 3, letters: string];

/** Pawn, knight, bishop, rook, queen, king; several spellings joined by a slash. */
const FROM_THE_PGN_STANDARD: readonly Row[] = [
  ['en', 'English', 0, 'P N/Kt B R Q K'],
  ['de', 'German', 1, 'B S L T D K'],
  ['fr', 'French', 1, 'P C F T D R'],
  ['es', 'Spanish', 1, 'P C A T D R'],
  ['it', 'Italian', 1, 'P C A T D R'],
  ['pt', 'Portuguese', 1, 'P C B T D R'],
  ['nl', 'Dutch', 1, 'O P L T D K'],
  ['pl', 'Polish', 1, 'P S G W H K'],
  ['da', 'Danish', 1, 'B S L T D K'],
  ['nb', 'Norwegian', 1, 'B S L T D K'],
  ['sv', 'Swedish', 1, 'B S L T D K'],
  ['cs', 'Czech', 2, 'P J S V D K'],
  ['et', 'Estonian', 2, 'P R O V L K'],
  ['fi', 'Finnish', 2, 'P R L T D K'],
  ['hu', 'Hungarian', 2, 'G H F B V K'],
  ['is', 'Icelandic', 2, 'P R B H D K'],
  ['ro', 'Romanian', 2, 'P C N T D R'],
];

const FROM_MEMORY: readonly Row[] = [
  ['x-problem', 'problem English', 1, 'P S B R Q K'],
  ['ru', 'Russian', 1, 'п К/K С/C Л Ф Кр/Kp/Kр/Кp'],
  ['uk', 'Ukrainian', 2, 'п К/K С/C Т Ф Кр/Kp'],
  ['bg', 'Bulgarian', 2, 'П К О Т Д Ц'],
  ['sr', 'Serbian (Cyrillic)', 2, 'П С Л Т Д К'],
  ['el', 'Greek', 2, 'Σ Ι Α Π Β Ρ'],
  ['ar', 'Arabic', 2, 'ب ح ف ر و م'],
  ['fa', 'Persian', 2, 'پ ا/اسب ف ر/رخ و ش'],
  ['he', 'Hebrew', 2, 'י/רגלי פ ר צ מה/ה מ'],
  ['hi', 'Hindi', 2, 'प घ/घो ऊ/ऊँ ह/हा व र/रा'],
  ['zh', 'Chinese', 1, '兵/卒 马/馬 象/相 车/車 后/後 王'],
  ['ja', 'Japanese', 2, 'ポ/歩 ナ/騎 ビ/僧 ル/塔 ク/妃 キ'],
  ['tr', 'Turkish', 3, 'P A F K V Ş'],
  ['ca', 'Catalan', 2, 'P C A T D R'],
  ['sl', 'Slovene, Croatian, Serbian (Latin)', 2, 'P S L T D K'],
  ['sk', 'Slovak', 2, 'P J S V D K'],
  ['lv', 'Latvian', 3, 'B Z L T D K'],
  ['lt', 'Lithuanian', 3, 'P Ž R B V K'],
  ['vi', 'Vietnamese', 3, 'C M T X H V'],
  ['id', 'Indonesian', 3, 'P K G B M R'],
  ['eo', 'Esperanto', 3, 'P Ĉ K T D R'],
];

function tableOf([tag, name, rarity, signs]: Row, source: PieceLetters['source']): PieceLetters {
  const kinds = signs.split(' ').map((spellings) => spellings.split('/'));
  const [p = [], n = [], b = [], r = [], q = [], k = []] = kinds;
  return { tag, name, rarity, source, letters: { p, n, b, r, q, k } };
}

/** The 17 tables of the PGN standard, then those from memory; English first, at most 40. */
export const PIECE_LETTERS: readonly PieceLetters[] = [
  ...FROM_THE_PGN_STANDARD.map((row) => tableOf(row, 'pgn')),
  ...FROM_MEMORY.map((row) => tableOf(row, 'memory')),
];

/** Figurines by kind, White's before Black's; which colour is drawn says nothing about who moves. */
export const FIGURINES: Readonly<Record<Kind, readonly [white: string, black: string]>> = {
  p: ['♙', '♟'],
  n: ['♘', '♞'],
  b: ['♗', '♝'],
  r: ['♖', '♜'],
  q: ['♕', '♛'],
  k: ['♔', '♚'],
};

/**
 * Men spelled out in scripts that stand before a square without a blank: Chinese, Japanese, Korean (from memory).
 * 冠 is a crown, which a queen wears as well as a king: legality decides.
 */
export const SPELLED_MEN: Readonly<Record<Kind, readonly string[]>> = {
  p: ['小兵', 'ポーン', '폰'],
  n: ['骑士', '騎士', 'ナイト', '나이트'],
  b: ['主教', 'ビショップ', '비숍'],
  r: ['城堡', 'ルーク', '룩'],
  q: ['皇后', 'クイーン', 'クィーン', '퀸', '冠'],
  k: ['国王', '國王', 'キング', '킹', '冠'],
};

/** The table of a language tag; English where there is none. */
export function pieceLettersOf(tag: string): PieceLetters {
  const found = PIECE_LETTERS.find((table) => table.tag === tag) ?? PIECE_LETTERS[0];
  if (found === undefined) throw new Error('The table of letters is empty');
  return found;
}
