// Is a move of an old descriptive notation written here: P-K4, Kt-KB3, QxBP, R-K8, PxP, or P4R, C3AR in the
// Romance languages, which name the rank first?

import { KIND_BIT } from '#lib/rules/moves-to.ts';
import { type Shape, shapeOf } from '../shape.ts';
import { ENGLISH, SPELLINGS } from './letters.ts';
import { isWordAt, rankAt } from './signs.ts';

/** A descriptive move and where it ends. */
export interface DescriptiveScan {
  readonly end: number;
  readonly shape: Shape;
  readonly canPromote: boolean;
}

const MEN: Readonly<Record<string, number>> = {
  P: KIND_BIT.p,
  N: KIND_BIT.n,
  B: KIND_BIT.b,
  R: KIND_BIT.r,
  Q: KIND_BIT.q,
  K: KIND_BIT.k,
};
/** Files by their man: both wings, the queen's, the king's. */
const FILES: Readonly<Record<string, readonly [both: number, queens: number, kings: number]>> = {
  R: [0x81, 0x01, 0x80],
  N: [0x42, 0x02, 0x40],
  B: [0x24, 0x04, 0x20],
  Q: [0x08, 0x08, 0x08],
  K: [0x10, 0x10, 0x10],
};

interface Name {
  readonly letter: string;
  readonly end: number;
}

interface Files {
  readonly files: number;
  readonly end: number;
}

/** The descriptive move at `at`, or null. Only capitals: "p-k4" is too close to prose. */
export function scanDescriptive(text: string, at: number): DescriptiveScan | null {
  const romance = romanceAt(text, at);
  if (romance !== null) return romance;
  const man = moverAt(text, at);
  if (man === null) return null;
  const origin = originAt(text, man.end);
  let cursor = origin.end;
  const isSpaced = text.charAt(cursor) === ' ';
  if (isSpaced) cursor += 1;
  const sign = text.charAt(cursor);
  const isColon = sign === ':' && manAt(text, cursor + 1) !== null && !isWordAt(text, cursor + 2);
  const verb = isSpaced ? (/^(?:takes|to) /.exec(text.slice(cursor, cursor + 6))?.[0] ?? '') : '';
  const isCapture = sign === 'x' || sign === 'X' || isColon || verb === 'takes ';
  if (!isCapture && sign !== '-' && verb === '') return null;
  cursor += verb === '' ? 1 : verb.length;
  if (isSpaced && text.charAt(cursor) === ' ') cursor += 1;
  const scan = isCapture ? captureAt(text, cursor, man.kinds) : stepAt(text, cursor, man.kinds);
  if (scan === null || origin.end === man.end) return scan;
  const { files: fromFiles, ranks: fromRanks } = origin;
  return { ...scan, shape: { ...scan.shape, fromFiles, fromRanks } };
}

const ROMANCE_MEN: Readonly<Record<string, number>> = {
  P: KIND_BIT.p,
  C: KIND_BIT.n,
  A: KIND_BIT.b,
  F: KIND_BIT.b,
  T: KIND_BIT.r,
  D: KIND_BIT.q,
  R: KIND_BIT.k,
};
const ROMANCE_FILES: Readonly<Record<string, string>> = { T: 'R', C: 'N', A: 'B', F: 'B', D: 'Q', R: 'K' };
const ROMANCE = /^([PCAFTDR])-?([1-8])([TCAFDR])([RD]?)(?![\p{L}\d])/u;

/** "P4R", "C3AR": man, rank, file by its man, wing. */
function romanceAt(text: string, at: number): DescriptiveScan | null {
  if (rankAt(text, at + 1) < 0 && rankAt(text, at + 2) < 0) return null;
  const match = ROMANCE.exec(text.slice(at, at + 7));
  if (match === null) return null;
  const [written, man = '', rank = '', file = '', wing = ''] = match;
  const kinds = ROMANCE_MEN[man] ?? 0;
  const files = FILES[ROMANCE_FILES[file] ?? '']?.[wing === '' ? 0 : wing === 'D' ? 1 : 2] ?? 0;
  const senses = SPELLINGS.get(man)?.find(({ sign }) => sign === man)?.senses ?? [];
  const langs = senses.reduce((mask, sense) => (sense.kindBit === kinds ? mask | sense.langs : mask), 0);
  const toRanks = 1 << (Number(rank) - 1);
  const shape = shapeOf({ kinds, langs, toFiles: files, toRanks, isRelative: true });
  return { end: at + written.length, shape, canPromote: rank === '8' };
}

/** "R(Q5)-Q8", "R(1)-Q1": where the mover stands, in brackets; anywhere where nothing is said. */
function originAt(
  text: string,
  at: number,
): { readonly files: number; readonly ranks: number; readonly end: number } {
  const anywhere = { files: 255, ranks: 255, end: at };
  if (text.charAt(at) !== '(') return anywhere;
  const named = filesAt(text, at + 1);
  const rankPlace = named?.end ?? at + 1;
  const rank = rankAt(text, rankPlace);
  const end = rank < 0 ? rankPlace : rankPlace + 1;
  if (end === at + 1 || text.charAt(end) !== ')') return anywhere;
  return { files: named?.files ?? 255, ranks: rank < 0 ? 255 : 1 << rank, end: end + 1 };
}

/** "P", "Kt", "KR", "QKt", "KBP": the wing of the mover is read over, legality decides. */
function moverAt(text: string, at: number): { readonly kinds: number; readonly end: number } | null {
  const first = manAt(text, at);
  if (first === null) return null;
  const second = manAt(text, first.end);
  const third = second === null ? null : manAt(text, second.end);
  const last = third ?? second ?? first;
  return { kinds: MEN[last.letter] ?? 0, end: last.end };
}

/** One man's letter; "Kt" counts as N. */
function manAt(text: string, at: number): Name | null {
  if (text.startsWith('Kt', at)) return { letter: 'N', end: at + 2 };
  const letter = text.charAt(at);
  return letter !== '' && Object.hasOwn(MEN, letter) ? { letter, end: at + 1 } : null;
}

function filesAt(text: string, at: number): Files | null {
  const first = manAt(text, at);
  if (first === null || first.letter === 'P') return null;
  const second = first.letter === 'Q' || first.letter === 'K' ? manAt(text, first.end) : null;
  if (second !== null && second.letter !== 'P' && second.letter !== 'Q' && second.letter !== 'K') {
    return { files: FILES[second.letter]?.[first.letter === 'Q' ? 1 : 2] ?? 0, end: second.end };
  }
  return { files: FILES[first.letter]?.[0] ?? 0, end: first.end };
}

function stepAt(text: string, at: number, kinds: number): DescriptiveScan | null {
  const goal = filesAt(text, at);
  if (goal === null) return null;
  const rank = rankAt(text, goal.end);
  if (rank < 0) return null;
  const isGlued = isWordAt(text, goal.end + 1);
  if (isGlued && !/^(?:[QRBN](?![a-zA-Z0-9])|ch|mate|dis|dbl)/.test(text.slice(goal.end + 1, goal.end + 5)))
    return null;
  const shape = shapeOf({ kinds, langs: ENGLISH, toFiles: goal.files, toRanks: 1 << rank, isRelative: true });
  return { end: goal.end + 1, shape, canPromote: rank === 7 };
}

function captureAt(text: string, at: number, kinds: number): DescriptiveScan | null {
  const victim = manAt(text, at);
  if (victim === null) return null;
  let toFiles = 255;
  let victims = MEN[victim.letter] ?? 0;
  let end = victim.end;
  const files = filesAt(text, at);
  if (files !== null && text.charAt(files.end) === 'P') {
    toFiles = files.files;
    victims = KIND_BIT.p;
    end = files.end + 1;
  }
  let toRanks = 255;
  if (text.charAt(end) === '/' || text.charAt(end) === '(') {
    const goal = filesAt(text, end + 1);
    const rank = goal === null ? -1 : rankAt(text, goal.end);
    if (goal !== null && rank >= 0) {
      toFiles &= goal.files;
      toRanks = 1 << rank;
      end = goal.end + (text.charAt(goal.end + 1) === ')' ? 2 : 1);
    }
  }
  if (isWordAt(text, end) && !/^(?:ch|mate|dis|dbl|ep)/.test(text.slice(end, end + 4))) return null;
  const shape = shapeOf({
    kinds,
    langs: ENGLISH,
    toFiles,
    toRanks,
    isCapture: true,
    victims,
    isRelative: true,
  });
  return { end, shape, canPromote: kinds === KIND_BIT.p };
}
