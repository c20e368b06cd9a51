// How does one more word or square change what a phrase has said so far? The words' parts come from
// word-table.ts; this file only knows in which order they make sense.

import { KIND_BIT } from '#lib/rules/moves-to.ts';
import { CONNECTORS } from './between.ts';
import { rankSaid } from './dictated.ts';
import { rarityOf } from './letters.ts';
import { fileOf, isCastlingBehind, isPromoting, isTaking, isVerb, isWord } from './lexeme-tests.ts';
import type { Lexeme, MoveLexeme } from './lexemes.ts';
import type { Phrase } from './phrase.ts';
import { addSquare, advance, type PhraseScan, takeDescriptor, takeRank } from './phrase-places.ts';
import type { WordRole } from './word-role.ts';
import { nearestPieceWord } from './word-slips.ts';
import { FILE_NOUNS, senseIn, sensesOf, WITH_WORDS } from './word-table.ts';

/** Words of other meaning that may stand between a man and its square. */
const MOST_UNKNOWN = 2;

const WINGS = new Set(['k', 'q', 'kr', 'qr']);
/** "Q takes the pawn on f7": letters before a verb. A small b is a file as well, so it is none. */
export const LONE_LETTERS = new Map([
  ['q', KIND_BIT.q],
  ['r', KIND_BIT.r],
  ['n', KIND_BIT.n],
  ['k', KIND_BIT.k],
]);
const MATING_VERBS = new Set(['mates', 'checks', 'checkmates']);

/** Adds the lexeme at the cursor to the phrase; false where the phrase ends before it. */
export function takeLexeme(scan: PhraseScan): boolean {
  const lexeme = scan.lexemes[scan.at];
  if (lexeme === undefined) return false;
  switch (lexeme.type) {
    case 'word':
      return takeWord(scan, lexeme.word);
    case 'move':
      return takeMove(scan, lexeme);
    case 'open':
      return takeBracketedWing(scan);
    case 'sign':
      return takeSign(scan, lexeme.sign);
    default:
      return false;
  }
}

/** "Rochade (lang)". */
function takeBracketedWing(scan: PhraseScan): boolean {
  const { phrase, lexemes } = scan;
  const [word, close] = [lexemes[scan.at + 1], lexemes[scan.at + 2]];
  if (!phrase.castles || phrase.side !== null || word?.type !== 'word' || close?.type !== 'close')
    return false;
  const isShort = senseIn(word.word, 'short') !== null;
  if (!isShort && senseIn(word.word, 'long') === null) return false;
  phrase.side = isShort ? 'short' : 'long';
  scan.at += 2;
  return advance(scan, true);
}

function takeSign(scan: PhraseScan, sign: string): boolean {
  const { phrase, lexemes } = scan;
  const next = lexemes[scan.at + 1];
  if (sign === '-' || sign === "'") return scan.at > 0 && advance(scan, false);
  if (sign === ':' && phrase.mover !== 0 && next?.type === 'move' && next.isBareSquare) {
    phrase.verb = 'take';
    return advance(scan, false);
  }
  if (sign === '=' && phrase.mover !== 0 && phrase.squares.length === 0) return advance(scan, false);
  if (sign === '=' && phrase.squares.length > 0) {
    phrase.promotes = true;
    return advance(scan, false);
  }
  const isPawn = phrase.mover === KIND_BIT.p;
  if (sign === ',' && isPawn && next?.type === 'word' && phrase.promotion === 0) {
    const goesOn = senseIn(next.word, 'promote') !== null || next.word === 'queens';
    return goesOn && advance(scan, false);
  }
  return false;
}

/** A square; with a new man behind it, if a pawn goes there. */
function takeMove(scan: PhraseScan, lexeme: MoveLexeme): boolean {
  const shapes = lexeme.ways[0]?.[0]?.shapes ?? [];
  const [shape] = shapes;
  const { phrase } = scan;
  const isNewMan =
    phrase.mover === KIND_BIT.p && shape !== undefined && shape.fromFiles === 255 && shape.to >= 0;
  if (lexeme.isBareSquare || !isNewMan || lexeme.ways.length > 1)
    return takeSquare(scan, shape, lexeme.isBareSquare);
  // Of a letter that several languages have ("e8=N"), the most usual meaning.
  const usual = Math.min(...shapes.map(({ langs }) => rarityOf(langs)));
  const kinds = shapes
    .filter(({ langs }) => rarityOf(langs) === usual)
    .reduce((mask, { promotion }) => (promotion === null ? mask : mask | KIND_BIT[promotion]), 0);
  if (kinds === 0 || !takeSquare(scan, shape, true)) return false;
  phrase.promotion = kinds;
  phrase.promotes = true;
  return true;
}

function takeSquare(
  scan: PhraseScan,
  shape: { readonly toFiles: number; readonly toRanks: number } | undefined,
  isSquare: boolean,
): boolean {
  const { phrase } = scan;
  if (
    !isSquare ||
    shape === undefined ||
    phrase.squares.length >= 2 ||
    (phrase.castles && phrase.side !== null)
  )
    return false;
  const isWay = scan.at === scan.start || scan.preposition === 'from' || phrase.squares.length > 0;
  if (phrase.mover === 0 && phrase.verb === null && !phrase.promotes && !phrase.castles && !isWay)
    return false;
  // "the rook on d1 and e1" are two rooks, "queen h5 f7" is a way.
  const [first] = phrase.squares;
  if (first !== undefined && first.files === shape.toFiles && first.ranks === shape.toRanks) return false;
  if (phrase.castles) {
    phrase.castles = false;
    phrase.mover = KIND_BIT.r;
  }
  addSquare(scan, { files: shape.toFiles, ranks: shape.toRanks, isRelative: false });
  return advance(scan, true);
}

function takeWord(scan: PhraseScan, word: string): boolean {
  const { phrase, lexemes } = scan;
  const next = lexemes[scan.at + 1];
  const file = fileOf(lexemes[scan.at]);
  if (file >= 0 && takesFile(scan, file, next)) return true;
  const man = LONE_LETTERS.get(word);
  if (man !== undefined && phrase.mover === 0 && isVerb(next)) return takePiece(scan, man);
  if (word === 'b' && phrase.mover === 0 && isGoingTo(lexemes, scan.at)) return takePiece(scan, KIND_BIT.b);
  // "Take on f7 with the bishop": who moves is named last.
  if (WITH_WORDS.has(word) && phrase.mover === 0 && phrase.verb === 'take') {
    scan.isWith = true;
    return advance(scan, false);
  }
  const roles = sensesOf(word);
  const isBeforeSquare = next?.type === 'move' && next.isBareSquare;
  const isBeforePiece =
    next?.type === 'word' && senseIn(next.word, 'piece') !== null && isTaking(lexemes[scan.at + 2]);
  if (word === 'at' || word === 'sah')
    return takeTurkish(scan, word, isBeforeSquare || isBeforePiece || isTaking(next));
  if (phrase.castles && phrase.side === null && WINGS.has(word)) {
    phrase.side = word.startsWith('k') ? 'short' : 'long';
    return advance(scan, true);
  }
  const piece = senseIn(word, 'piece');
  if (piece !== null && takesWing(scan, piece.kinds, isBeforeSquare)) return true;
  if (piece !== null) return takePiece(scan, piece.kinds);
  for (const role of ['take', 'promote', 'castle', 'give', 'passant', 'short', 'long', 'go'] as const) {
    if (roles.some((sense) => sense.role === role) && takeRole(scan, role, word)) return true;
  }
  if (roles.some(({ role }) => role === 'check')) return takeCheck(scan, word);
  const rank = senseIn(word, 'rank');
  if (rank !== null) return takeRank(scan, rank.rank, next);
  if (
    roles.some(({ role }) => role === 'pronoun') &&
    phrase.verb === 'take' &&
    phrase.victims === 0 &&
    phrase.squares.length < 2
  ) {
    phrase.isRecapture = true;
    return advance(scan, true);
  }
  for (const role of ['to', 'on', 'from'] as const) {
    if (!roles.some((sense) => sense.role === role)) continue;
    scan.preposition = role;
    return advance(scan, false);
  }
  if (roles.length > 0) return advance(scan, false);
  return takeUnknown(scan, word);
}

/** "Enroque del lado de la dama": the wing by its man. */
function takesWing(scan: PhraseScan, kinds: number, isBeforeSquare: boolean): boolean {
  const { phrase } = scan;
  const before = scan.lexemes[scan.at - 1];
  // "Castle queen" at the end says the wing too; in front of more it begins the next move.
  const isLast = scan.lexemes[scan.at + 1] === undefined;
  const isNamedAlone = before?.type === 'word' && (isLast || senseIn(before.word, 'castle') === null);
  if (!phrase.castles || phrase.side !== null || isBeforeSquare || !isNamedAlone) return false;
  if (kinds !== KIND_BIT.k && kinds !== KIND_BIT.q) return false;
  phrase.side = kinds === KIND_BIT.k ? 'short' : 'long';
  return advance(scan, true);
}

function takeUnknown(scan: PhraseScan, word: string): boolean {
  const { phrase } = scan;
  if (phrase.side !== null && !phrase.castles && isCastlingBehind(scan.lexemes, scan.at))
    return advance(scan, false);
  if (phrase.mover === 0 && phrase.verb === null) {
    const near = nearestPieceWord(word);
    if (near === null) return false;
    phrase.isTypo = true;
    phrase.mover = near;
    return advance(scan, true);
  }
  if (CONNECTORS.has(word)) return isPromoting(scan.lexemes[scan.at + 1]) && advance(scan, false);
  if (phrase.squares.length > 0 || phrase.unknownWords >= MOST_UNKNOWN || phrase.mover === 0) return false;
  phrase.unknownWords += 1;
  return advance(scan, false);
}

/** "B to g5", "B mates": a letter that is also a file; a pawn of that file would be called by its square. */
export function isGoingTo(lexemes: readonly Lexeme[], at: number): boolean {
  const [own, verb, square] = [lexemes[at], lexemes[at + 1], lexemes[at + 2]];
  if (own?.type !== 'word' || own.word !== 'b' || verb?.type !== 'word') return false;
  if (MATING_VERBS.has(verb.word)) return true;
  const shape = square?.type === 'move' && square.isBareSquare ? square.ways[0]?.[0]?.shapes[0] : undefined;
  return verb.word === 'to' && shape !== undefined && shape.toFiles !== 2;
}

/** "at" is a Turkish knight before a square, else a preposition; "şah" is a king or a check. */
function takeTurkish(scan: PhraseScan, word: string, isPiece: boolean): boolean {
  const { phrase } = scan;
  if (isPiece && phrase.mover === 0 && phrase.verb === null)
    return takePiece(scan, word === 'at' ? KIND_BIT.n : KIND_BIT.k);
  if (word === 'sah') return takeCheck(scan, word);
  scan.preposition = 'on';
  return phrase.mover !== 0 || phrase.verb !== null ? advance(scan, false) : false;
}

/** A lone letter: the file of a man ("f-pawn"), of a pawn that takes, or of a square said in words. */
function takesFile(scan: PhraseScan, file: number, next: Lexeme | undefined): boolean {
  const { phrase, lexemes } = scan;
  const beyond = next?.type === 'sign' && '-.'.includes(next.sign) ? lexemes[scan.at + 2] : next;
  // "I see rook h8": a file's name as it is dictated stands before no man.
  const own = lexemes[scan.at];
  const isLetter = own?.type === 'word' && own.word.length === 1;
  if (isLetter && beyond?.type === 'word' && senseIn(beyond.word, 'piece') !== null) {
    // "Rei toma e torre h5": an "and" before the next move.
    if (phrase.verb === 'take' && own.word === 'e' && beyond === next && isVerb(lexemes[scan.at + 2]))
      return false;
    scan.file = file;
    return advance(scan, false);
  }
  // "Knight to C-7", "to C. 7.": spelled with a dash or a full stop.
  const rank = rankSaid(lexemes, beyond === next ? scan.at + 1 : scan.at + 2);
  if (rank >= 0 && phrase.mover !== 0 && phrase.squares.length < 2) {
    addSquare(scan, { files: 1 << file, ranks: 1 << rank, isRelative: false });
    scan.at += beyond === next ? 1 : 2;
    return advance(scan, true);
  }
  if (phrase.mover === 0 && isTaking(next)) {
    phrase.mover = KIND_BIT.p;
    phrase.moverFiles = 1 << file;
    return advance(scan, true);
  }
  if (next?.type === 'word' && FILE_NOUNS.has(next.word)) return advance(scan, false);
  const isArticle = file === 0 || file === 4;
  const isMoversFile =
    !isArticle && phrase.mover !== 0 && phrase.squares.length === 0 && phrase.verb === null;
  if (isMoversFile && isVerb(next)) {
    phrase.moverFiles = 1 << file;
    return advance(scan, true);
  }
  return false;
}

function takePiece(scan: PhraseScan, kinds: number): boolean {
  const { phrase, lexemes, file } = scan;
  const next = lexemes[scan.at + 1];
  const files = file >= 0 ? 1 << file : 255;
  scan.file = -1;
  if (scan.isWith && phrase.mover === 0) {
    phrase.mover = kinds;
    phrase.moverFiles = files;
    return advance(scan, true);
  }
  if (phrase.mover !== 0 && next?.type === 'word' && phrase.squares.length === 0 && phrase.verb !== 'take') {
    const rank = senseIn(next.word, 'rank');
    if (rank !== null) return takeDescriptor(scan, kinds, rank.rank);
  }
  // Turkish names the man taken before the verb.
  if (phrase.mover !== 0 && phrase.verb === null && phrase.squares.length === 0 && isTaking(next)) {
    phrase.victims = kinds;
    return advance(scan, true);
  }
  const isNewMan = phrase.promotes || (phrase.mover === KIND_BIT.p && isOnLastRank(phrase));
  if (isNewMan && phrase.promotion === 0 && kinds !== KIND_BIT.p && (phrase.mover & ~KIND_BIT.p) === 0) {
    phrase.promotion = kinds;
    phrase.promotes = true;
    return advance(scan, true);
  }
  if (phrase.verb === 'take' && phrase.victims === 0 && phrase.squares.length < 2) {
    if (phrase.squares.length === 1 && !phrase.squares[0]?.isBeforeVerb) return false;
    phrase.victims = kinds;
    phrase.victimFiles = files;
    return advance(scan, true);
  }
  // "pawn takes rook, queens": the new man by its verb.
  if (phrase.mover === KIND_BIT.p && phrase.victims !== 0 && kinds === KIND_BIT.q) {
    phrase.promotion = kinds;
    return advance(scan, true);
  }
  if (phrase.promotes && kinds === KIND_BIT.p && phrase.mover === 0) phrase.mover = kinds;
  else if (phrase.mover !== 0) return false;
  phrase.mover = kinds;
  phrase.moverFiles = files;
  phrase.isDoubtfulFile = isWord(lexemes[scan.at - 1], 'a') || isWord(lexemes[scan.at - 1], 'e');
  return advance(scan, true);
}

function isOnLastRank(phrase: Phrase): boolean {
  const last = phrase.squares[phrase.squares.length - 1];
  return last !== undefined && (last.ranks & 0x81) !== 0;
}

function takeRole(scan: PhraseScan, role: WordRole, word: string): boolean {
  const { phrase, lexemes } = scan;
  if (role === 'take') {
    if (phrase.verb === 'take' && phrase.victims !== 0) return false;
    if (phrase.castles || phrase.promotes) return false;
    phrase.verb = 'take';
  } else if (role === 'go') {
    if (phrase.verb === null) phrase.verb = 'go';
    return advance(scan, false);
  } else if (role === 'give') {
    phrase.verb = 'give';
  } else if (role === 'promote') {
    if (phrase.mover !== 0 && (phrase.mover & KIND_BIT.p) === 0) return false;
    phrase.promotes = true;
    // "underpromote to", "makes a": only the man that follows says something.
    return advance(scan, phrase.mover !== 0);
  } else if (role === 'castle') {
    if (phrase.castles && phrase.side !== null) return false;
    if (phrase.mover !== 0 && phrase.mover !== KIND_BIT.k) return false;
    phrase.castles = true;
  } else if (role === 'passant') {
    phrase.isPassant = true;
  } else {
    const isBeforeCastle = isCastlingBehind(lexemes, scan.at + 1);
    if (!phrase.castles && !isBeforeCastle) return word !== 'lang' && advance(scan, false);
    phrase.side = role === 'short' ? 'short' : 'long';
  }
  return advance(scan, true);
}

/** Check and mate end a phrase that has said its move, and say nothing in one that has not. */
function takeCheck(scan: PhraseScan, word: string): boolean {
  const { phrase } = scan;
  if (phrase.squares.length > 0 || phrase.victims !== 0) return false;
  const next = scan.lexemes[scan.at + 1];
  // "What about knight checks?" asks for several.
  const isAsked = word === 'checks' && next?.type === 'sign' && next.sign === '?';
  if (phrase.mover !== 0 && phrase.verb === null && MATING_VERBS.has(word) && !isAsked) {
    phrase.mates = true;
    return advance(scan, true);
  }
  if (phrase.verb === 'take') return false;
  return advance(scan, false);
}
