// Which moves are said in words ("bishop takes f7", "castle short")? Words and squares become one token;
// what says no move stays as it was.

import { KIND_BIT } from '#lib/rules/moves-to.ts';
import { CONNECTORS } from './between.ts';
import { cueAt } from './cue-table.ts';
import { withDictatedSquares } from './dictated.ts';
import { fileOf, isCastlingBehind, isVerb } from './lexeme-tests.ts';
import type { Lexeme } from './lexemes.ts';
import { wordedLongMove } from './long-words.ts';
import { originBehind } from './origin-words.ts';
import { type AnyLexeme, emptyPhrase, shapesOfPhrase, worthOf } from './phrase.ts';
import type { PhraseScan } from './phrase-places.ts';
import { isGoingTo, LONE_LETTERS, takeLexeme } from './phrase-scan.ts';
import { promotionBehind } from './promotion-words.ts';
import { splitCapture } from './split-capture.ts';
import type { WordRole } from './word-role.ts';
import { nearestPieceWord } from './word-slips.ts';
import { senseIn, sensesOf } from './word-table.ts';

/** Most lexemes in one phrase. */
const LONGEST = 18;
const SUBJECTS = new Set(
  'he she they black white er sie schwarz weiss il elle lui lei ele ela el ella negras blancas noir noirs nero он она черные белые'.split(
    ' ',
  ),
);

/** c1, g1, c8 and g8. */
const CASTLED = new Set([2, 6, 58, 62]);

const DENIALS = new Set("can't cannot cant won't couldn't mustn't doesn't kein keine".split(' '));

const STARTING_ROLES: ReadonlySet<WordRole> = new Set([
  'piece',
  'take',
  'give',
  'promote',
  'castle',
  'passant',
  'go',
  'check',
]);
/** The lexemes with every phrase that says a move joined to one move. */
export function phrasesOf(written: readonly Lexeme[]): readonly AnyLexeme[] {
  if (!written.some(({ type }) => type === 'word' || type === 'open')) return written;
  const lexemes = withDictatedSquares(written);
  const out: AnyLexeme[] = [];
  let at = 0;
  while (at < lexemes.length) {
    const found = startsPhrase(lexemes, at)
      ? phraseAt(lexemes, at)
      : (promotionBehind(lexemes, at) ?? originBehind(lexemes, at) ?? wordedLongMove(lexemes, at));
    const lexeme = lexemes[at];
    if (found !== null) {
      if (!isCastlingAgain(found.lexeme, out, behindColon(lexemes, found.end))) out.push(found.lexeme);
      at = found.end;
    } else {
      if (lexeme !== undefined) out.push(lexeme);
      at += 1;
    }
  }
  return out;
}

/** "0-0-0 (castling)", "castling 0-0": the word beside the sign is no further move. */
function isCastlingAgain(lexeme: AnyLexeme, before: readonly AnyLexeme[], next: Lexeme | undefined): boolean {
  if (castleOf(lexeme) !== 'any') return false;
  const last = before.findLast((one) => one.type !== 'open' && !(one.type === 'sign' && one.sign === ','));
  return [last, next].some((one) => one !== undefined && (castleOf(one) !== null || isKingsSteps(one)));
}

/** "Kg1 castle", "king to c1, castling": where a king goes who castles. */
function isKingsSteps(lexeme: AnyLexeme): boolean {
  const shapes = lexeme.type === 'move' ? (lexeme.ways[0]?.[0]?.shapes ?? []) : [];
  return shapes.some(({ kinds, to }) => (kinds & KIND_BIT.k) !== 0 && CASTLED.has(to));
}

function behindColon(lexemes: readonly Lexeme[], at: number): Lexeme | undefined {
  const lexeme = lexemes[at];
  return lexeme?.type === 'sign' && lexeme.sign === ':' ? lexemes[at + 1] : lexeme;
}

function castleOf(lexeme: AnyLexeme): 'short' | 'long' | 'any' | null {
  return lexeme.type === 'move' ? (lexeme.ways[0]?.[0]?.shapes[0]?.castle ?? null) : null;
}

function startsPhrase(lexemes: readonly Lexeme[], at: number): boolean {
  const lexeme = lexemes[at];
  if (lexeme?.type === 'move') return isSquareToSquare(lexemes, at);
  if (lexeme?.type !== 'word') return false;
  const next = lexemes[at + 1];
  if (isCorrection(lexemes, at)) return false;
  if (lexeme.word === 'at' && isBehindProse(lexemes[at - 1])) return false;
  const senses = sensesOf(lexeme.word);
  if (next?.type === 'move' && next.isBareSquare && senses.some(({ role }) => role === 'from')) return true;
  for (const { role } of senses) if (STARTING_ROLES.has(role)) return true;
  if (senses.some(({ role }) => role === 'short' || role === 'long')) {
    return isCastlingBehind(lexemes, at + 1);
  }
  if (senses.some(({ role }) => role === 'on'))
    return next?.type === 'word' && senseIn(next.word, 'passant') !== null;
  if (fileOf(lexeme) >= 0) return true;
  if ((LONE_LETTERS.has(lexeme.word) && isVerb(next)) || isGoingTo(lexemes, at)) return true;
  return nearestPieceWord(lexeme.word) !== null;
}

/** "The pawn can't go to e5": nothing is played. */
function isDenial(lexeme: Lexeme): boolean {
  if (lexeme.type !== 'word') return false;
  return DENIALS.has(lexeme.word) || cueAt([lexeme.word], 0)?.cue === 'reject-before';
}

/** "Take it back": words that take a move back together and would say another one by themselves. */
function isCorrection(lexemes: readonly Lexeme[], at: number): boolean {
  const words: string[] = [];
  for (let next = at; next < at + 4; next += 1) {
    const lexeme = lexemes[next];
    if (lexeme?.type !== 'word') break;
    words.push(lexeme.word);
  }
  const found = words.length > 1 ? cueAt(words, 0) : null;
  return found !== null && found.words > 1 && found.cue === 'correct';
}

/** "at" behind a word of prose is a preposition and no Turkish knight. */
function isBehindProse(before: Lexeme | undefined): boolean {
  return before?.type === 'word' && !CONNECTORS.has(before.word);
}

/** "e1 to e8", with whatever man stands there; "b1 knight to d2". */
function isSquareToSquare(lexemes: readonly Lexeme[], at: number): boolean {
  const [from, word, to] = [lexemes[at], lexemes[at + 1], lexemes[at + 2]];
  // "e4 e5 knight to f3" goes on with a new move; "the b1 knight" is one man.
  const before = lexemes[at - 1];
  const hasArticle = before?.type === 'word' && senseIn(before.word, 'article') !== null;
  const isAdjective =
    hasArticle && word?.type === 'word' && senseIn(word.word, 'piece') !== null && to?.type === 'word';
  if (from?.type === 'move' && from.isBareSquare && isAdjective)
    return isVerb(to) || senseIn(to.word, 'go') !== null;
  if (from?.type === 'move' && from.isBareSquare && isCalledOut(lexemes, at)) return true;
  if (from?.type !== 'move' || !from.isBareSquare || to?.type !== 'move' || !to.isBareSquare) return false;
  return word?.type === 'word' && senseIn(word.word, 'to') !== null && word.word !== 'a';
}

/** "c7 knight", as it is called out: at the start, or further on in a text that starts so. */
function isCalledOut(lexemes: readonly Lexeme[], at: number): boolean {
  if (!isManAlone(lexemes[at + 1], lexemes[at + 2])) return false;
  const [first] = lexemes;
  const isStyle = first?.type === 'move' && first.isBareSquare && isManAlone(lexemes[1], lexemes[2]);
  return at === 0 || (isStyle && lexemes[at - 1]?.type === 'sign');
}

/** A man and no square behind him. */
function isManAlone(word: Lexeme | undefined, behind: Lexeme | undefined): boolean {
  if (word?.type !== 'word' || senseIn(word.word, 'piece') === null) return false;
  if (behind?.type === 'word') return senseIn(behind.word, 'check') !== null;
  return behind === undefined || behind.type === 'sign';
}

function phraseAt(
  lexemes: readonly Lexeme[],
  start: number,
): { readonly lexeme: AnyLexeme; readonly end: number } | null {
  const scan: PhraseScan = {
    lexemes,
    phrase: emptyPhrase(),
    start,
    at: start,
    preposition: null,
    isWith: false,
    file: -1,
    end: start,
  };
  const before = lexemes[start - 1];
  // "He takes": somebody named by no man takes what has just moved.
  if (before?.type === 'word' && SUBJECTS.has(before.word) && isVerb(lexemes[start]))
    scan.phrase.isRecapture = true;
  // A word that is taken moves the scan on; were one not to, the phrase would end there and not the program (rule R7).
  for (let before = -1; scan.at > before && scan.at < Math.min(lexemes.length, start + LONGEST); ) {
    before = scan.at;
    if (!takeLexeme(scan)) break;
  }
  const strength = worthOf(scan.phrase);
  const first = lexemes[start];
  const last = lexemes[scan.end - 1];
  if (strength === null || first === undefined || last === undefined) return null;
  if (lexemes.slice(start, scan.end).some(isDenial)) return null;
  if (scan.phrase.isTypo && strength !== 'phrase') return null;
  const step = { shapes: shapesOfPhrase(scan.phrase), start: first.start, end: last.end };
  const split = splitCapture(lexemes, start, scan.end);
  const isQuestioned = last.type === 'move' && last.isQuestioned;
  const isExclaimed = last.type === 'move' && last.isExclaimed;
  const { isTypo } = scan.phrase;
  // Without a square a phrase can be prose, however sure it sounds.
  const isSure = strength === 'phrase' && (scan.phrase.squares.length > 0 || scan.phrase.castles);
  return {
    lexeme: {
      type: 'move',
      start: first.start,
      end: last.end,
      ways: split === null ? [[step]] : [[step], split],
      isBareSquare: false,
      strength: isSure
        ? 'phrase'
        : strength === 'hint'
          ? 'hint'
          : scan.phrase.verb === null && strength === 'vague'
            ? 'vague'
            : 'loose',
      isQuestioned,
      isExclaimed,
      isTypo,
      isMoverless: scan.phrase.mover === 0 && scan.phrase.squares.length === 0 && scan.phrase.victims !== 0,
      isVerbless: scan.phrase.verb === null && !scan.phrase.castles && !scan.phrase.promotes,
    },
    end: scan.end,
  };
}
