// Which men an endgame table holds, and by which name it is known (rule V4).

import type { Kind, Position, Side } from '#lib/rules/position.ts';
import { KINDS, kindOf, sideOf } from '#lib/rules/position.ts';

/** A table's name: White's men, then Black's, kings first: `KQKR`, `KBNK`, `KPK`. */
export type Material = string;

const ORDER = 'qrbnp';

function rank(men: string): string {
  // Longer first, then by the strongest men: a text that sorts the stronger side before the weaker.
  return String(9 - men.length) + [...men].map((man) => ORDER.indexOf(man)).join('');
}

function sorted(men: readonly Kind[]): string {
  return [...men].sort((a, b) => ORDER.indexOf(a) - ORDER.indexOf(b)).join('');
}

/** The name for the men beside the kings of both sides, and whether colours have to be turned for it. */
export function nameMaterial(
  white: readonly Kind[],
  black: readonly Kind[],
): { material: Material; isTurned: boolean } {
  const ours = sorted(white);
  const theirs = sorted(black);
  const isTurned = rank(theirs) < rank(ours);
  const [first, second] = isTurned ? [theirs, ours] : [ours, theirs];
  return { material: `K${first}K${second}`.toUpperCase(), isTurned };
}

/** The men of a position beside its kings. */
export function menBeside(position: Position, side: Side): Kind[] {
  const men: Kind[] = [];
  for (const man of position.board) {
    const kind = kindOf(man);
    if (kind !== null && kind !== 'k' && sideOf(man) === side) men.push(kind);
  }
  return men;
}

/** Splits a name into the men beside the kings, White's then Black's; null where it names no table of three or four men. */
export function parseMaterial(material: Material): { white: Kind[]; black: Kind[] } | null {
  const match = /^K([QRBNP]{0,2})K([QRBNP]{0,2})$/.exec(material);
  if (match === null) return null;
  const white = kindsIn(match[1] ?? '');
  const black = kindsIn(match[2] ?? '');
  if (white.length + black.length > 2 || white.length + black.length < 1) return null;
  return nameMaterial(white, black).material === material ? { white, black } : null;
}

function kindsIn(letters: string): Kind[] {
  return KINDS.filter((kind) => kind !== 'k').flatMap((kind) =>
    [...letters.toLowerCase()].filter((letter) => letter === kind).map(() => kind),
  );
}

/** The men between the kings in the order of the name: kind 1 to 5, plus 8 for Black's, a byte each, first lowest. */
export function materialCode(material: Material): number {
  const letters = material.slice(1).toLowerCase();
  let code = 0;
  let shift = 0;
  let black = 0;
  for (const letter of letters) {
    const kind = 'pnbrqk'.indexOf(letter) + 1;
    if (kind === 6) {
      black = 8;
      continue;
    }
    code |= (kind + black) << shift;
    shift += 8;
  }
  return code;
}

/** Places a side to move: 16 or, with pawns, 32 squares of the white king times 64 a further man. */
export function placesOf(material: Material): number {
  return (material.includes('P') ? 32 : 16) * 64 ** (material.length - 1);
}

function withoutOne(men: readonly Kind[]): Kind[][] {
  return men.map((_, i) => men.filter((__, j) => j !== i));
}

function promoted(men: readonly Kind[]): Kind[][] {
  const pieces: readonly Kind[] = ['q', 'r', 'b', 'n'];
  return men.flatMap((man, i) =>
    man === 'p' ? pieces.map((piece) => men.map((other, j) => (j === i ? piece : other))) : [],
  );
}

/** The tables that captures and promotions lead to, each once; a table can be built only after these. */
export function materialsBelow(material: Material): Material[] {
  const men = parseMaterial(material);
  if (men === null) throw new Error(`no table is called ${material}`);
  const { white, black } = men;
  const names = new Set<Material>();
  const add = (w: readonly Kind[], b: readonly Kind[]): void => {
    if (w.length + b.length > 0) names.add(nameMaterial(w, b).material);
  };
  for (const rest of withoutOne(black)) add(white, rest);
  for (const rest of withoutOne(white)) add(rest, black);
  for (const next of promoted(white)) {
    add(next, black);
    for (const rest of withoutOne(black)) add(next, rest);
  }
  for (const next of promoted(black)) {
    add(white, next);
    for (const rest of withoutOne(white)) add(rest, next);
  }
  names.delete(material);
  return [...names].sort();
}
