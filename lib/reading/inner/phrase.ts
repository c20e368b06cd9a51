// What has a sentence said about a move so far? Word after word is added; the end makes a shape of it.

import { ANY_KIND, KIND_BIT } from '#lib/rules/moves-to.ts';
import { KINDS } from '#lib/rules/position.ts';
import { type Shape, shapeOf } from '../shape.ts';
import type { Lexeme, MoveLexeme } from './lexemes.ts';

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

/** A square named in a phrase, with the preposition before it and whether the verb came later. */
export interface NamedSquare {
  readonly files: number;
  readonly ranks: number;
  readonly preposition: 'to' | 'on' | 'from' | null;
  readonly isBeforeVerb: boolean;
  /** Ranks are counted from the mover's side ("king four"). */
  readonly isRelative: boolean;
}

/** The parts of a move named so far; filled by one scan and not kept. */
export interface Phrase {
  mover: number;
  moverFiles: number;
  /** The file can be an "a" or an Italian or Portuguese "and" ("e torre h5"). */
  isDoubtfulFile: boolean;
  verb: 'take' | 'go' | 'give' | null;
  victims: number;
  victimFiles: number;
  readonly squares: NamedSquare[];
  promotion: number;
  promotes: boolean;
  castles: boolean;
  side: 'short' | 'long' | null;
  isPassant: boolean;
  isRecapture: boolean;
  rank: number;
  stepsTwo: boolean;
  /** A verb of mate or check directly behind the man ("the knight mates"). */
  mates: boolean;
  unknownWords: number;
  isTypo: boolean;
}

/** A phrase that has said nothing. */
export function emptyPhrase(): Phrase {
  return {
    mover: 0,
    moverFiles: 255,
    isDoubtfulFile: false,
    verb: null,
    victims: 0,
    victimFiles: 255,
    squares: [],
    promotion: 0,
    promotes: false,
    castles: false,
    side: null,
    isPassant: false,
    isRecapture: false,
    rank: -1,
    stepsTwo: false,
    mates: false,
    unknownWords: 0,
    isTypo: false,
  };
}

/** What a finished phrase is worth: a sure move, something vague, or nothing. */
export function worthOf(phrase: Phrase): 'phrase' | 'vague' | 'hint' | null {
  const { squares, verb, mover } = phrase;
  if (phrase.castles) return phrase.side === null && squares.length === 0 ? 'vague' : 'phrase';
  if (phrase.isPassant) return 'phrase';
  if (phrase.promotes && (mover === 0 || (mover & KIND_BIT.p) !== 0)) {
    return mover !== 0 || phrase.promotion !== 0 ? 'phrase' : squares.length > 0 ? 'vague' : null;
  }
  if (squares.length === 0) {
    if (mover !== 0 && phrase.rank >= 0) return 'phrase';
    if (mover === 0) return verb === 'take' && (phrase.victims !== 0 || phrase.isRecapture) ? 'vague' : null;
    if (verb === 'give') return 'hint';
    return verb === 'take' || phrase.mates || phrase.stepsTwo ? 'vague' : null;
  }
  if (mover === 0 && squares.length === 2) return 'phrase';
  if (mover === 0) return verb === 'take' ? 'vague' : null;
  if (phrase.unknownWords > 0) return 'vague';
  const isPlace = squares.length === 1 && squares[0]?.preposition === 'on' && verb === null;
  return isPlace ? 'vague' : 'phrase';
}

/** The shapes that a phrase says. */
export function shapesOfPhrase(phrase: Phrase): Shape[] {
  if (phrase.castles) return [shapeOf({ castle: phrase.side ?? wingOf(phrase.squares[0]) })];
  const shapes = placesOf(phrase).flatMap((places, index) => shapesWith(phrase, places, index));
  if (!phrase.isDoubtfulFile) return shapes;
  const anyFile = { ...phrase, moverFiles: 255 };
  return [...shapes, ...placesOf(phrase).flatMap((places, index) => shapesWith(anyFile, places, index + 1))];
}

/** "King to c1 castling": the square names the wing. */
function wingOf(square: NamedSquare | undefined): 'short' | 'long' | 'any' {
  if (square === undefined) return 'any';
  return square.files === 4 ? 'long' : square.files === 64 ? 'short' : 'any';
}

function shapesWith(phrase: Phrase, { from, to }: Places, cost: number): Shape[] {
  const takes = phrase.verb === 'take' || phrase.victims !== 0;
  const isPawnsBusiness = phrase.isPassant || (phrase.promotes && phrase.mover === 0);
  const base = {
    kinds: isPawnsBusiness ? KIND_BIT.p : phrase.mover === 0 ? ANY_KIND : phrase.mover,
    fromFiles: (from?.files ?? 255) & phrase.moverFiles,
    fromRanks: from?.ranks ?? 255,
    toFiles: (to?.files ?? 255) & phrase.victimFiles,
    toRanks: to?.ranks ?? (phrase.rank >= 0 ? 1 << phrase.rank : 255),
    isRelative: to?.isRelative ?? false,
    isCapture: takes,
    victims: phrase.victims,
    isPassant: phrase.isPassant,
    cost,
    isRecapture: phrase.isRecapture || (phrase.verb === 'take' && phrase.victims === 0 && to === null),
  };
  if (phrase.stepsTwo) return [shapeOf({ ...base, fromRanks: 2, toRanks: 8, isRelative: true })];
  const isPromoting = phrase.promotes || phrase.promotion !== 0;
  if (!isPromoting) return [shapeOf(base)];
  const men = KINDS.filter((kind) => (phrase.promotion & KIND_BIT[kind]) !== 0);
  const lastRank = { ...base, kinds: KIND_BIT.p, toRanks: base.toRanks & 0x81 };
  return men.length === 0
    ? [shapeOf({ ...lastRank, promotion: 'q' })]
    : men.map((kind) => shapeOf({ ...lastRank, promotion: kind }));
}

interface Places {
  readonly from: NamedSquare | null;
  readonly to: NamedSquare | null;
}

/**
 * Of two squares the second is the goal; one square beside the man and before the verb is where it stands
 * ("der Turm auf e1 schlägt"), or else the goal ("Dame auf h7 schlagen").
 */
function placesOf(phrase: Phrase): readonly Places[] {
  const [first, second] = phrase.squares;
  if (first === undefined) return [{ from: null, to: null }];
  if (second !== undefined) return [{ from: first, to: second }];
  if (phrase.verb === 'take' && !first.isBeforeVerb) return [{ from: null, to: first }];
  if (first.preposition === 'from') return [{ from: first, to: null }];
  if (first.preposition !== 'on' || !first.isBeforeVerb || phrase.verb === null)
    return [{ from: null, to: first }];
  const isOrigin = [{ from: first, to: null }];
  return phrase.verb === 'take' && phrase.victims === 0 ? [...isOrigin, { from: null, to: first }] : isOrigin;
}
