// What the search walks over: moves with what the words around them say (rules R3, R5, R10), and brackets.

import { type Cue, cueAt } from './cue-table.ts';
import type { Lexeme, MoveLexeme } from './lexemes.ts';
import type { Step } from './scan-compact.ts';
import { senseIn } from './word-table.ts';

/** How much a token can also be prose: 0 surely a move, 1 likely a move, 2 likely prose, 3 surely no move. */
export type Prose = 0 | 1 | 2 | 3;

/** A token that may be a move, with the cues that lead to it. */
export interface MoveItem {
  readonly type: 'move';
  readonly start: number;
  readonly end: number;
  /** Empty for a token that only a mended slip can make a move. */
  readonly ways: readonly (readonly Step[])[];
  readonly prose: Prose;
  readonly isMalformed: boolean;
  readonly isPhrase: boolean;
  /** A square and nothing else but marks behind it. */
  readonly isBareSquare: boolean;
  /** No move, but somebody who writes it means one ("queen sacrifice"). */
  readonly isHint: boolean;
  readonly isQuestioned: boolean;
  readonly isExclaimed: boolean;
  readonly isStruck: boolean;
  readonly isTypo: boolean;
  /** A sentence, a line or a paragraph ends before it. */
  readonly isFreshStart: boolean;
  /** Words or a new sentence stand between it and the move before. */
  readonly isSetOff: boolean;
  /** A comma and nothing else stands before it. */
  readonly hasComma: boolean;
  /** The next move comes with a word of correction. */
  readonly isTakenBack: boolean;
  readonly cues: ReadonlySet<Cue | 'slash'>;
  /** 2: turned down for certain; 1: perhaps. */
  readonly rejected: 0 | 1 | 2;
  readonly number: number | null;
  /** Dots behind the number, or before the move without a number; two or more are Black's. */
  readonly dots: number;
}

export type Item =
  | MoveItem
  | { readonly type: 'open' | 'close'; readonly start: number; readonly end: number };

/** A move lexeme, or one made from a phrase of words. */
export type AnyLexeme =
  | Lexeme
  | (Omit<MoveLexeme, 'strength'> & {
      readonly strength: 'phrase' | 'loose' | 'vague' | 'hint';
      readonly isTypo: boolean;
      /** A man and a square, nothing done: as often a description as a move. */
      readonly isVerbless: boolean;
      /** "Takes the pawn", no man named: behind a move it describes that move. */
      readonly isMoverless: boolean;
    });

const LOCATIVES = new Set(
  `on at in of from against square field the this that around near and's auf am im der das en de del sur du des la le el su sul da di no na em do
   около на поле пункт with's guards guard covers cover attacks attack controls defends weak behind into's via
   feld campo case casa casella kare protects`.split(/\s+/),
);
const NOUNS_BEHIND = new Set(
  `square squares paper pawn pawns file rank knight bishop rook queen king is's weak sheet size field complex point hole format
   bauer springer feld papier peon pion`.split(/\s+/),
);

/** Labels of further variations: "b) ...". */
const LABELS = new Set(['b', 'c', 'd']);

/** Words that join moves and are no prose. */
export const CONNECTORS: ReadonlySet<string> = new Set(
  'and then und y et e и ve dann luego puis poi next followed by & + затем потом sonra ensuite entao'.split(
    ' ',
  ),
);

/** Moves and brackets that are looked at; no answer has so many (rule R7). */
const MOST_ITEMS = 400;

interface Between {
  readonly words: string[];
  readonly cues: Set<Cue | 'slash'>;
  rejectsLast: 0 | 1 | 2;
  rejectsNext: 0 | 1 | 2;
  number: number | null;
  dots: number;
  isFreshStart: boolean;
}

/** Turns lexemes into items. `struck` marks characters that the writer struck out. */
export function itemsOf(lexemes: readonly AnyLexeme[], struck: Uint8Array | null): Item[] {
  const items: Item[] = [];
  let gap: AnyLexeme[] = [];
  let lastMove = -1;
  lexemes.forEach((lexeme, index) => {
    const isMove = lexeme.type === 'move' || lexeme.type === 'malformed';
    if (!isMove) {
      gap.push(lexeme);
      if (lexeme.type === 'open' || lexeme.type === 'close') items.push(lexeme);
      return;
    }
    const between = readBetween(gap, lastMove < 0);
    gap = [];
    markRejected(items, lastMove, between.rejectsLast);
    if (between.cues.has('correct') || between.cues.has('restart')) markTakenBack(items, lastMove);
    lastMove = items.length;
    items.push(
      moveItem(lexeme, between, { prose: proseOf(lexemes, index), isStruck: struck?.[lexeme.start] === 1 }),
    );
  });
  markRejected(items, lastMove, readBetween(gap, lastMove < 0).rejectsLast);
  for (let at = 1; at < items.length; at += 1) spreadOr(items, at);
  return withoutSlashes(items.length > MOST_ITEMS ? items.slice(0, MOST_ITEMS) : items);
}

function markRejected(items: Item[], at: number, level: 0 | 1 | 2): void {
  const item = items[at];
  if (level === 0 || item === undefined || item.type !== 'move' || item.rejected >= level) return;
  items[at] = { ...item, rejected: level };
}

/** "e4, d4 or c4": the "or" speaks of the one before as well, where only a comma stands between. */
function spreadOr(items: Item[], at: number): void {
  const item = items[at];
  const next = items[at + 1];
  if (item?.type !== 'move' || next?.type !== 'move' || !item.hasComma || !next.cues.has('or')) return;
  items[at] = { ...item, cues: new Set([...item.cues, 'slash']) };
}

function markTakenBack(items: Item[], at: number): void {
  const item = items[at];
  if (item?.type === 'move') items[at] = { ...item, isTakenBack: true };
}

/** Slashes between all moves are commas, not choices. */
function withoutSlashes(items: readonly Item[]): Item[] {
  const moves = items.filter((item) => item.type === 'move');
  const slashes = moves.filter(({ cues }) => cues.has('slash')).length;
  if (moves.length < 3 || slashes < moves.length - 1) return [...items];
  return items.map((item) =>
    item.type === 'move' ? { ...item, cues: new Set([...item.cues].filter((cue) => cue !== 'slash')) } : item,
  );
}

function moveItem(
  lexeme: Extract<AnyLexeme, { type: 'move' | 'malformed' }>,
  between: Between,
  around: { readonly prose: Prose; readonly isStruck: boolean },
): MoveItem {
  const isMove = lexeme.type === 'move';
  return {
    type: 'move',
    start: lexeme.start,
    end: lexeme.end,
    ways: isMove ? lexeme.ways : [],
    prose: around.prose,
    isMalformed: !isMove,
    isPhrase:
      isMove && (lexeme.strength === 'phrase' || lexeme.strength === 'loose' || lexeme.strength === 'vague'),
    isBareSquare: isMove && lexeme.isBareSquare,
    isHint: isMove && lexeme.strength === 'hint',
    isQuestioned: isMove && lexeme.isQuestioned,
    isExclaimed: isMove && lexeme.isExclaimed,
    isStruck: around.isStruck,
    isTypo: isMove && 'isTypo' in lexeme && lexeme.isTypo,
    isFreshStart: between.isFreshStart,
    isSetOff: between.isFreshStart || between.words.length > 0,
    hasComma: between.words.join('') === ',',
    isTakenBack: false,
    cues: between.cues,
    rejected: between.rejectsNext,
    number: between.number,
    dots: between.dots,
  };
}

/** What stands between two moves, or before the first. */
function readBetween(gap: readonly AnyLexeme[], isFirst: boolean): Between {
  const words: string[] = [];
  const breaks: boolean[] = [];
  const found: Between = {
    words,
    cues: new Set(),
    rejectsLast: 0,
    rejectsNext: 0,
    number: null,
    dots: 0,
    isFreshStart: false,
  };
  let dashes = 0;
  for (const [index, lexeme] of gap.entries()) {
    if (lexeme.type === 'word') {
      words.push(lexeme.word);
      breaks.push(false);
      if (lexeme.word === 'b' && isColon(gap[index + 1])) found.cues.add('black');
      if (LABELS.has(lexeme.word) && gap[index + 1]?.type === 'close') found.cues.add('or');
    } else if (lexeme.type === 'number') {
      found.number = lexeme.n;
      found.dots = lexeme.dots;
    } else if (lexeme.type === 'sign') {
      if (lexeme.sign === '.') found.dots += 1;
      if (';\n|'.includes(lexeme.sign) || (lexeme.sign === '.' && words.length > 0))
        found.isFreshStart = true;
      if (lexeme.sign === '/') found.cues.add('slash');
      if (lexeme.sign === '~') found.cues.add('any');
      if (lexeme.sign === '-') dashes += 1;
      if (breaks.length > 0 && '.;!?\n'.includes(lexeme.sign)) breaks[breaks.length - 1] = true;
      if (words.length === 0 && '.;!?\n'.includes(lexeme.sign)) {
        words.push('');
        breaks.push(true);
      }
      if (lexeme.sign === ',' || lexeme.sign === ':') {
        words.push(',');
        breaks.push(false);
      }
    } else if (lexeme.type === 'open' || lexeme.type === 'close') {
      words.push('');
      breaks.push(true);
    }
  }
  if (dashes >= 2) found.cues.add('any');
  readCues(words, breaks, found, isFirst);
  return found;
}

/** A comma or a "but" between a word and the move: they no longer belong together. */
function separates(word: string): boolean {
  return word === ',' || cueAt([word], 0)?.cue === 'but';
}

function isColon(lexeme: AnyLexeme | undefined): boolean {
  return lexeme?.type === 'sign' && lexeme.sign === ':';
}

function readCues(
  words: readonly string[],
  breaks: readonly boolean[],
  found: Between,
  isFirst: boolean,
): void {
  let at = 0;
  while (at < words.length) {
    const hit = cueAt(words, at);
    if (hit === null) {
      at += 1;
      continue;
    }
    const { cue } = hit;
    const next = at + hit.words;
    const isBrokenBefore = breaks.slice(0, at).includes(true);
    const isBrokenAfter = breaks.slice(at, words.length).includes(true);
    if (cue === 'reject-after' || cue === 'doubt-after') {
      if (!isBrokenBefore && at < (cue === 'reject-after' ? 6 : 2) && !changesSubject(words, at)) {
        found.rejectsLast = cue === 'reject-after' || found.rejectsLast === 2 ? 2 : 1;
      }
    } else if (cue === 'reject-before' || cue === 'doubt-before') {
      const isNear = words.length - next < 4 && !words.slice(next).some(separates);
      if (!isBrokenAfter && isNear) found.rejectsNext = cue === 'reject-before' ? 2 : 1;
    } else if (cue === 'no') {
      // "no choice", "no defence" correct nothing; "no," "no wait" and "no Re8" do.
      const follower = words[next];
      // "No Td7, sino Te8" turns the first move down before it is read.
      if (isFirst && follower === undefined) {
        found.rejectsNext = 2;
        break;
      }
      if (
        follower === undefined ||
        follower === ',' ||
        follower === '' ||
        breaks[at] === true ||
        cueAt(words, next)?.cue === 'correct'
      ) {
        found.cues.add('correct');
      }
    } else if (cue !== 'none') found.cues.add(cue);
    at = next;
  }
}

/** No connector, no check, no cue: a word of prose. */
function isPlain(word: string): boolean {
  return (
    !CONNECTORS.has(word) &&
    senseIn(word, 'check') === null &&
    senseIn(word, 'passant') === null &&
    cueAt([word], 0) === null
  );
}

/** "... and Black can't": what follows no longer speaks of the move. */
function changesSubject(words: readonly string[], before: number): boolean {
  return words.slice(0, before).some((word) => {
    const cue = cueAt([word], 0)?.cue;
    return cue === 'white' || cue === 'black' || CONNECTORS.has(word) || senseIn(word, 'piece') !== null;
  });
}

/** How likely the token is a word of prose; written moves with a man's letter never are. */
function proseOf(lexemes: readonly AnyLexeme[], index: number): Prose {
  const lexeme = lexemes[index];
  if (lexeme?.type === 'malformed') return lexeme.isMoveLike ? 1 : 2;
  if (lexeme === undefined || lexeme.type !== 'move') return 2;
  const before = lexemes[index - 1];
  if (lexeme.strength === 'strong') return 0;
  if (lexeme.strength === 'phrase')
    return lexeme.isVerbless && before?.type === 'word' && isPlain(before.word) ? 1 : 0;
  const after = lexemes[index + 1];
  const isTold = 'isMoverless' in lexeme && lexeme.isMoverless;
  if (isTold && before?.type !== 'word' && lexemes.slice(0, index).some(({ type }) => type === 'move'))
    return 3;
  if (lexeme.strength === 'vague') return 2;
  if (lexeme.strength === 'loose') return 1;
  if (lexeme.strength === 'hint') return 3;
  if (before?.type === 'word' && LOCATIVES.has(before.word)) return 3;
  if (after?.type === 'word' && NOUNS_BEHIND.has(after.word)) return 3;
  if (lexeme.strength === 'files' && (before?.type === 'word' || after?.type === 'word')) return 3;

  const words = [before, after].filter((one) => one?.type === 'word');
  if (words.some(({ word }) => isPlain(word))) return 2;
  return words.length > 0 ? 1 : 0;
}
