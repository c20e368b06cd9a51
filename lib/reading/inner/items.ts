// What the search walks over: moves with what the words around them say (rules R3, R5, R10), and brackets.

import type { Side } from '#lib/rules/position.ts';
import { type Between, isPlain, readBetween } from './between.ts';
import { type Cue, cueAt } from './cue-table.ts';
import type { Marks } from './node.ts';
import type { AnyLexeme } from './phrase.ts';
import { LISTING, type Prose, proseOf } from './prose-of.ts';
import type { Step } from './scan-compact.ts';

/** What is said of a move: cues of words, a slash before it, one more of the defender's threats. */
export type ItemCue = Cue | 'slash' | 'menace-too';

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
  /** The same with words that say something else: no plain "then". */
  readonly isNewThought: boolean;
  /** Words of prose between it and the move before. */
  readonly plainWords: number;
  /** A comma and nothing else stands before it. */
  readonly hasComma: boolean;
  /** Joined to the move before by a comma, an "and", an "or" and nothing else; `and` in the last two cases. */
  readonly joint: 'comma' | 'and' | null;
  /** The next move comes with a word of correction. */
  readonly isTakenBack: boolean;
  readonly cues: ReadonlySet<ItemCue>;
  /** 2: turned down for certain; 1: perhaps. */
  readonly rejected: 0 | 1 | 2;
  readonly number: number | null;
  /** Dots behind the number, or before the move without a number; two or more are Black's. */
  readonly dots: number;
}

export type Item =
  | MoveItem
  | { readonly type: 'open' | 'close'; readonly start: number; readonly end: number };

/** The signs and words that stay with the move when it has joined the tree. */
export function marksOf({ isQuestioned, isExclaimed, cues }: MoveItem): Marks {
  return {
    isQuestioned,
    isExclaimed,
    isThreat: cues.has('threat'),
    isObjection: cues.has('but'),
    isAlternative: cues.has('or') || cues.has('slash'),
    isConditional: cues.has('branch'),
  };
}

/** "That queen sac", "what a queen sacrifice": something seen is spoken of, not a move of one's own. */
const POINTING = new Set(
  `that this those these what such nice lovely beautiful great cool love loved was dieses diese jenes ese esa este esta cet cette
   quel quelle questo questa quello quella esse essa этот эта эту bu su`.split(/\s+/),
);

/** Moves and brackets that are looked at; no answer has so many (rule R7). */
const MOST_ITEMS = 400;

/** Turns lexemes into items. `struck` marks characters that the writer struck out. */
export function itemsOf(
  lexemes: readonly AnyLexeme[],
  { struck, solver }: { readonly struck: Uint8Array | null; readonly solver: Side },
): Item[] {
  const items: Item[] = [];
  let gap: AnyLexeme[] = [];
  let lastMove = -1;
  // "*Qg7": among chatters a single star before a word puts right what stood before it.
  const isStarred = lexemes.filter(isStar).length === 1;
  lexemes.forEach((lexeme, index) => {
    const isMove = lexeme.type === 'move' || lexeme.type === 'malformed';
    if (!isMove) {
      gap.push(lexeme);
      if (lexeme.type === 'open' || lexeme.type === 'close') items.push(lexeme);
      return;
    }
    const between = readBetween(gap, lastMove < 0);
    easeQuestion(items, lastMove, gap[0]);
    if (isStarred && lastMove >= 0 && isStar(gap[gap.length - 1])) between.cues.add('correct');
    gap = [];
    carryOver(items[lastMove], between);
    settleThreat(between.cues, solver);
    settleWell(between, solver);
    turnDown(items, lastMove, between);
    if (between.cues.has('correct') || between.cues.has('restart')) markTakenBack(items, lastMove);
    if (between.isForLast) addCue(items, lastMove, 'branch');
    lastMove = items.length;
    items.push(
      moveItem(lexeme, between, {
        prose: proseOf(lexemes, index),
        isStruck: struck?.[lexeme.start] === 1 && struck[lexeme.start + 1] === 1,
      }),
    );
  });
  easeQuestion(items, lastMove, gap[0]);
  const last = readBetween(gap, lastMove < 0);
  settleWell(last, solver);
  turnDown(items, lastMove, last);
  for (let at = 1; at < items.length; at += 1) {
    spreadOr(items, at);
    weighPraise(items, at);
    setAsideCandidates(items, at - 1);
    spreadRejection(items, at);
    spreadMenace(items, at);
    spreadProse(items, at);
  }
  return withoutSlashes(items.length > MOST_ITEMS ? items.slice(0, MOST_ITEMS) : items);
}

/** A threat of a side that is named is the solver's or the defender's. */
function settleThreat(cues: Set<Cue | 'slash'>, solver: Side): void {
  if (cues.has('threat-white')) cues.add(solver === 'w' ? 'threat' : 'menace');
  if (cues.has('threat-black')) cues.add(solver === 'b' ? 'threat' : 'menace');
}

/** "And Black is fine" turns down what White has just tried. */
function settleWell(between: Between, solver: Side): void {
  if (between.saysOfLast.has(solver === 'w' ? 'well-black' : 'well-white')) between.rejectsLast = 2;
}

/** What joins the sentence that follows to the rest. */
const CARRIED: readonly Cue[] = ['or', 'branch', 'correct', 'restart', 'but', 'menace'];

/** "If the rook leaves d8 Qxf7": what is said before a square of prose is said of the move behind it. */
function carryOver(last: Item | undefined, between: Between): void {
  if (last?.type !== 'move' || last.prose === 0) return;
  if (last.cues.has('any') && last.isPhrase) between.cues.add('any');
  if (last.prose < 2 || !last.isBareSquare) return;
  if (last.isFreshStart) between.isFreshStart = true;
  for (const cue of CARRIED) if (last.cues.has(cue)) between.cues.add(cue);
}

function isStar(lexeme: AnyLexeme | undefined): boolean {
  return lexeme?.type === 'sign' && lexeme.sign === '*';
}

function markRejected(items: Item[], at: number, level: 0 | 1 | 2): void {
  const item = items[at];
  if (level === 0 || item === undefined || item.type !== 'move' || item.rejected >= level) return;
  items[at] = { ...item, rejected: level };
}

/** "Ist es nicht Dxh7+?" and its like in every language ask for a yes: a doubt at most, and no refusal. */
function easeQuestion(items: Item[], at: number, behind: AnyLexeme | undefined): void {
  const item = items[at];
  if (item?.type !== 'move' || item.rejected !== 2) return;
  const isAsked = item.isQuestioned || (behind?.type === 'sign' && behind.sign === '?');
  if (isAsked) items[at] = { ...item, rejected: 1 };
}

/** What is said behind a move against it, or for it beside another; of a whole list where the words are of several. */
function turnDown(items: Item[], at: number, { rejectsLast, saysOfLast }: Between): void {
  for (const cue of saysOfLast) addCue(items, at, cue);
  markRejected(items, at, rejectsLast);
  const offersLast = at > 0 && saysOfLast.has('beside-after');
  if (offersLast) addCue(items, at, 'or');
  if (!(saysOfLast.has('of-several') && rejectsLast > 0) && !offersLast) return;
  for (const one of listBefore(items, at)) {
    markRejected(items, one, rejectsLast);
    if (offersLast) addCue(items, one, 'or');
  }
}

/** The members of the list "a, b and c" that ends at `at`, from the last to the first. */
function listBefore(items: readonly Item[], at: number): number[] {
  const found: number[] = [];
  for (let one = at; one > 0; one -= 1) {
    const [item, before] = [items[one], items[one - 1]];
    if (item?.type !== 'move' || item.joint === null || before?.type !== 'move') break;
    found.push(one - 1);
  }
  return found;
}

/** The end of the list "a, b and c" that begins before `at`; `at` itself where there is none. */
function listEnd(items: readonly Item[], at: number): number {
  let end = at;
  for (let next = items[end]; next?.type === 'move' && next.joint !== null; next = items[end]) {
    end += 1;
    if (next.joint === 'and') return end;
  }
  return at;
}

/** "Black threatens Qc1 and Rd1": the second may be one more threat, or the answer to the first. */
function spreadMenace(items: Item[], at: number): void {
  const first = items[at - 1];
  if (first?.type !== 'move' || first.joint !== null) return;
  const cue = first.cues.has('menace') ? 'menace-too' : first.cues.has('between') ? 'or' : null;
  if (cue === null) return;
  const end = listEnd(items, at);
  for (let one = at; one < end; one += 1) addCue(items, one, cue);
}

/** "a2, b1 and b2 are covered": squares of one list are all told or all played. */
function spreadProse(items: Item[], at: number): void {
  const first = items[at - 1];
  if (first?.type !== 'move' || !first.isBareSquare || first.joint !== null) return;
  const end = listEnd(items, at);
  const list = items.slice(at - 1, end);
  if (end === at || !list.every((one) => one.type === 'move' && one.isBareSquare)) return;
  const prose = list.reduce<Prose>(
    (most, one) => (one.type === 'move' && one.prose > most ? one.prose : most),
    0,
  );
  for (let one = at - 1; one < end; one += 1) {
    const item = items[one];
    if (item?.type === 'move') items[one] = { ...item, prose };
  }
}

/** "e4, d4 or c4": the "or" speaks of the one before as well, where only a comma stands between. */
function spreadOr(items: Item[], at: number): void {
  const item = items[at];
  const next = items[at + 1];
  if (item?.type === 'move' && next?.type === 'move' && item.hasComma && next.cues.has('or'))
    addCue(items, at, 'slash');
}

/** "Ng5 looks good, but Bxh7+": praise with a "but" behind it is a polite no (rule R10), unless the other works "too". */
function weighPraise(items: Item[], at: number): void {
  const first = items[at - 1];
  const second = items[at];
  if (first?.type !== 'move' || second?.type !== 'move') return;
  if (second.cues.has('beside-after')) addCue(items, at, 'or');
  // "My son says Qh5, I say Nxf7."
  if (first.cues.has('says') && second.cues.has('verdict')) markRejected(items, at - 1, 1);
  if (!second.cues.has('but') || second.cues.has('also-after') || second.cues.has('beside-after')) return;
  const isPraised = first.cues.has('praise-after') || first.cues.has('beside-after');
  if (!isPraised && !second.cues.has('better-after') && !second.cues.has('verdict')) return;
  // "Qxe4 or Bg5 are natural": what is said of a list is said of all its members.
  for (let one = at - 1; one >= 0; one -= 1) {
    markRejected(items, one, 1);
    const [before, item] = [items[one - 1], items[one]];
    const isListed = item?.type === 'move' && item.joint !== null;
    if (!isListed && !(before?.type === 'move' && before.cues.has('praise-after'))) break;
  }
}

/** "Candidates: Rxd7, Qxe6+, Qb8+. ...": the list answers nothing yet (rule R10). */
function setAsideCandidates(items: Item[], at: number): void {
  const item = items[at];
  if (item?.type !== 'move' || !item.cues.has('candidates')) return;
  markRejected(items, at, 1);
  for (let one = at + 1; one < items.length; one += 1) {
    const next = items[one];
    if (next?.type !== 'move' || next.joint === null) return;
    markRejected(items, one, 1);
  }
}

/** "I considered Qd2, h4 and Ng5": what is said before a list is said of all its members. */
function spreadRejection(items: Item[], at: number): void {
  const first = items[at - 1];
  if (first?.type !== 'move' || first.rejected === 0 || first.joint !== null) return;
  const end = listEnd(items, at);
  for (let one = at; one < end; one += 1) markRejected(items, one, first.rejected);
}

function addCue(items: Item[], at: number, cue: ItemCue): void {
  const item = items[at];
  if (item?.type === 'move') items[at] = { ...item, cues: new Set([...item.cues, cue]) };
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
  const plainWords = between.words.filter((word) => word !== '' && word !== ',' && isPlain(word)).length;
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
    isHint:
      isMove && lexeme.strength === 'hint' && !between.words.slice(-2).some((word) => POINTING.has(word)),
    isQuestioned: isMove && lexeme.isQuestioned,
    isExclaimed: isMove && lexeme.isExclaimed,
    isStruck: around.isStruck,
    isTypo: isMove && 'isTypo' in lexeme && lexeme.isTypo,
    isFreshStart: between.isFreshStart,
    isSetOff: between.isFreshStart || between.words.length > 0,
    isNewThought: between.isFreshStart && plainWords > 2,
    plainWords,
    hasComma: between.words.join('') === ',',
    joint: jointOf(between),
    isTakenBack: false,
    cues: between.cues,
    rejected: between.rejectsNext,
    number: between.number,
    dots: between.dots,
  };
}

function jointOf({ words, number, isFreshStart }: Between): MoveItem['joint'] {
  if (number !== null || isFreshStart || words.length > 2) return null;
  const said = words.filter((word) => word !== ',');
  if (said.length === 0) return words.length === 1 ? 'comma' : null;
  const [word] = said;
  return said.length === 1 && word !== undefined && (LISTING.has(word) || cueAt([word], 0)?.cue === 'or')
    ? 'and'
    : null;
}
