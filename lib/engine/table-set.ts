// Exact results of endings with three or four men (rule V4): the tables a caller has, each loaded or
// built the first time it is asked for, never "used if there".

import { kindOf, type Position, sideOf } from '#lib/rules/position.ts';
import { generateTable } from './generate-table.ts';
import {
  type Material,
  materialCode,
  materialsBelow,
  menBeside,
  nameMaterial,
  placesOf,
} from './material.ts';
import { openTable } from './table-format.ts';
import type { EngineProgress } from './verdict.ts';

/** What a table says of a position, from the side to move. */
export interface TableResult {
  readonly material: Material;
  readonly result: 'won' | 'drawn' | 'lost';
  /** Moves of the winning side to mate, the fifty-move rule ignored; 0 is mated; null where drawn. */
  readonly distance: number | null;
}

/** Where bytes of tables come from and go to; a machine's cache, or nothing. */
export interface TableStore {
  /** Bytes once saved under this name, or null. Damaged bytes are recognised here and the table built anew. */
  readonly load: (material: Material) => Uint8Array | null;
  readonly save: (material: Material, table: Uint8Array) => void;
}

/** How a table may be built on the way. */
export interface TableWork {
  readonly shouldStop?: (() => boolean) | undefined;
  readonly onProgress?: ((progress: EngineProgress) => void) | undefined;
}

/** A set of tables that grows on demand. */
export interface TableSet {
  /** Has this position a table: three or four men, or two kings, no castling right? */
  covers(position: Position): boolean;
  /** The exact result; null where `covers` is false or `shouldStop` ended the building. */
  probe(position: Position, work?: TableWork): TableResult | null;
  /** The value bytes of a table, building what is lacking; null where stopped. */
  values(material: Material, work?: TableWork): Uint8Array | null;
}

const LOST = 128;
const ILLEGAL = 255;

/** So many bytes of values a set with a store keeps in memory; what was used longest ago goes first. */
const MOST_BYTES = 160_000_000;

/** A set over a store; without one, tables live in memory only and none is let go. */
export function createTableSet(store?: TableStore): TableSet {
  const known = new Map<Material, Uint8Array>();
  const keep = (material: Material, held: Uint8Array): Uint8Array => {
    // Set anew, so that the order of the map is the order of last use.
    known.delete(material);
    known.set(material, held);
    if (store !== undefined) letGo(known);
    return held;
  };
  const values = (material: Material, work: TableWork = {}): Uint8Array | null => {
    const held = known.get(material) ?? loadValues(store, material);
    if (held !== null) return keep(material, held);
    const below = new Map<Material, Uint8Array>();
    for (const name of materialsBelow(material)) {
      const ready = values(name, work);
      if (ready === null) return null;
      below.set(name, ready);
    }
    const table = generateTable(material, { ...work, valuesOf: (name) => below.get(name) ?? lacking(name) });
    if (table === null) return null;
    store?.save(material, table);
    return keep(material, table.subarray(table.length - 2 * placesOf(material)));
  };
  return { covers, values, probe: (position, work) => probe(position, (material) => values(material, work)) };
}

function letGo(known: Map<Material, Uint8Array>): void {
  let bytes = [...known.values()].reduce((sum, { length }) => sum + length, 0);
  for (const [material, { length }] of known) {
    if (bytes <= MOST_BYTES) return;
    known.delete(material);
    bytes -= length;
  }
}

function lacking(material: Material): never {
  throw new Error(`the table ${material} was to be built first`);
}

function loadValues(store: TableStore | undefined, material: Material): Uint8Array | null {
  const bytes = store?.load(material) ?? null;
  if (bytes === null) return null;
  const opened = openTable(material, bytes);
  return opened.ok ? opened.value : null;
}

function covers(position: Position): boolean {
  let men = 0;
  for (const man of position.board) if (man !== 0) men += 1;
  return men <= 4 && position.castling === 0;
}

function probe(position: Position, valuesOf: (material: Material) => Uint8Array | null): TableResult | null {
  if (!covers(position)) return null;
  const { material, isTurned } = nameMaterial(menBeside(position, 'w'), menBeside(position, 'b'));
  if (material === 'KK') return { material, result: 'drawn', distance: null };
  const table = valuesOf(material);
  if (table === null) return null;
  const isFirst = (position.turn === 'w') !== isTurned;
  const value = table[(isFirst ? 0 : placesOf(material)) + placeOf(position, material, isTurned)] ?? ILLEGAL;
  if (value === ILLEGAL) throw new Error(`not a legal position of ${material}`);
  if (value === 0) return { material, result: 'drawn', distance: null };
  return value < LOST
    ? { material, result: 'won', distance: value }
    : { material, result: 'lost', distance: value - LOST };
}

/** The square at which a pawn is stored: its own first rank where it may be taken en passant. */
function storedSquare(position: Position, square: number): number {
  const passed = position.enPassant;
  if (passed < 0 || !canTakeEnPassant(position)) return square;
  const stands = position.turn === 'b' ? passed + 8 : passed - 8;
  if (square !== stands) return square;
  return position.turn === 'b' ? square - 24 : square + 24;
}

/** Does an enemy pawn stand beside the pawn that made the double step? Pins do not matter: both places then agree. */
function canTakeEnPassant(position: Position): boolean {
  const stands = position.turn === 'b' ? position.enPassant + 8 : position.enPassant - 8;
  return [-1, 1].some((step) => {
    if ((stands & 7) + step < 0 || (stands & 7) + step > 7) return false;
    const man = position.board[stands + step] ?? 0;
    return kindOf(man) === 'p' && sideOf(man) === position.turn;
  });
}

function placeOf(position: Position, material: Material, isTurned: boolean): number {
  const flip = isTurned ? 56 : 0;
  const squares = new Map<number, number[]>();
  position.board.forEach((man, square) => {
    if (man === 0) return;
    const seen = isTurned ? man ^ 8 : man;
    const stored = kindOf(man) === 'p' ? storedSquare(position, square) : square;
    squares.set(seen, [...(squares.get(seen) ?? []), stored ^ flip]);
  });
  const white = squares.get(6)?.[0] ?? 0;
  const mirror = ((white & 4) !== 0 ? 7 : 0) | (!material.includes('P') && (white & 32) !== 0 ? 56 : 0);
  const home = white ^ mirror;
  let place = (home & 3) | ((home >> 3) << 2);
  for (let code = materialCode(material); code !== 0; code >>>= 8) {
    place = place * 64 + ((squares.get(code & 255)?.shift() ?? 0) ^ mirror);
  }
  return place * 64 + ((squares.get(14)?.[0] ?? 0) ^ mirror);
}
