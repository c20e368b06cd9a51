// What a written move says about itself: which men, from where, to where. Rule R2: a shape is no move yet;
// the legal moves of a position decide which moves it can mean.

import { ANY_KIND } from '#lib/rules/moves-to.ts';
import type { Kind, Square } from '#lib/rules/position.ts';

/** What a token says about a move; sets are bit masks, 255 is "any file" or "any rank". */
export interface Shape {
  /** Kinds of men, bits of KIND_BIT. */
  readonly kinds: number;
  /** Languages in which the token says so, bits of LANGUAGES; -1 for all. */
  readonly langs: number;
  readonly fromFiles: number;
  readonly fromRanks: number;
  readonly toFiles: number;
  readonly toRanks: number;
  /** The one goal where files and ranks leave only one; else -1. */
  readonly to: Square;
  readonly isCapture: boolean;
  /** Kinds of the man taken; 0 where nothing is said. */
  readonly victims: number;
  readonly promotion: Kind | null;
  readonly castle: 'short' | 'long' | 'any' | null;
  /** Files stand as they are, ranks are counted from the mover's side (descriptive notation). */
  readonly isRelative: boolean;
  /** Only a capture in passing. */
  readonly isPassant: boolean;
  /** Takes the man that has just moved where it can ("takes", "recaptures"). */
  readonly isRecapture: boolean;
  /** How unusual this way of writing is. */
  readonly cost: number;
}

const ANY: Shape = {
  kinds: ANY_KIND,
  langs: -1,
  fromFiles: 255,
  fromRanks: 255,
  toFiles: 255,
  toRanks: 255,
  to: -1,
  isCapture: false,
  victims: 0,
  promotion: null,
  castle: null,
  isRelative: false,
  isPassant: false,
  isRecapture: false,
  cost: 0,
};

/** A shape from what is said; the goal is worked out from files and ranks. */
export function shapeOf(said: Partial<Omit<Shape, 'to'>>): Shape {
  const shape = { ...ANY, ...said };
  return { ...shape, to: shape.isRelative ? -1 : onlySquare(shape.toFiles, shape.toRanks) };
}

/** The square where a set of files and a set of ranks hold one each; -1 otherwise. */
function onlySquare(files: number, ranks: number): Square {
  if (files === 0 || ranks === 0 || (files & (files - 1)) !== 0 || (ranks & (ranks - 1)) !== 0) return -1;
  return (31 - Math.clz32(ranks)) * 8 + (31 - Math.clz32(files));
}

/** The shape on a board turned by 180 degrees (rule R14); castling and descriptive ranks stay. */
export function turnShape(shape: Shape): Shape {
  return shapeOf({
    ...shape,
    fromFiles: mirror(shape.fromFiles),
    toFiles: mirror(shape.toFiles),
    fromRanks: mirror(shape.fromRanks),
    toRanks: mirror(shape.toRanks),
  });
}

function mirror(bits: number): number {
  let mirrored = 0;
  for (let bit = 0; bit < 8; bit += 1) if ((bits >> bit) & 1) mirrored |= 128 >> bit;
  return mirrored;
}
