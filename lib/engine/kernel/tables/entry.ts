// The flat interface of the table generator: numbers in, bytes left in memory.

import { HEAP_BASE } from '../layout';
import { prepareAttackSets } from './attack-sets';
import { setMaterial, places } from './layout';
import { forgetTables, registerTable } from './lookup';
import { setArrays } from './generate';

export { markLegal as tableMark, countAll as tableCount, step as tableStep } from './generate';

/** Where the values begin; the two work arrays of the same size follow them. */
export const TABLE_FIRST: i32 = <i32>HEAP_BASE;

/** Makes room for `bytes` in all; false where the memory cannot grow so far. */
export function tableReserve(bytes: i32): bool {
  const pages = (bytes + 65535) >>> 16;
  return pages <= memory.size() || memory.grow(pages - memory.size()) >= 0;
}

/** Begins a table; returns its places a side. Then memory of 6 * places from TABLE_FIRST is its own. */
export function tableBegin(code: i32): i32 {
  prepareAttackSets();
  forgetTables();
  setMaterial(code);
  return places;
}

/** Makes a finished table known whose values were copied to `start`. */
export function tableKnow(code: i32, start: i32, tablePlaces: i32): bool {
  return registerTable(code, start, tablePlaces);
}

/** To be called when memory is reserved and zero. */
export function tableReady(): void {
  setArrays(TABLE_FIRST);
}
