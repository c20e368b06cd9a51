// Builds one endgame table by retrograde analysis (rule V4): exact distance to mate of every legal
// position of three or four men, promotion, en passant and stalemate included, no castling rights.

import { loadTableKernel, type TableKernel } from './inner/table-kernel.ts';
import { type Material, materialCode, materialsBelow, parseMaterial, placesOf } from './material.ts';
import { sealTable, TABLE_HEADER } from './table-format.ts';
import type { EngineProgress } from './verdict.ts';

/** What a build needs besides the name. */
export interface TableBuild {
  /** The value bytes (no header) of a table below this one, as `openTable` gives them. */
  readonly valuesOf: (material: Material) => Uint8Array;
  readonly shouldStop?: (() => boolean) | undefined;
  /** `done` counts slices of the two passes, then steps of one move of distance, whose number is unknown: `total` grows. */
  readonly onProgress?: ((progress: EngineProgress) => void) | undefined;
}

/** Slices of the two counting passes: one rank of the white king's squares each. */
const SLICES = 16;

function placeTables(kernel: TableKernel, material: Material, build: TableBuild): void {
  const below = materialsBelow(material).map((name) => ({ name, values: build.valuesOf(name) }));
  const own = kernel.tableBegin(materialCode(material));
  const first = kernel.TABLE_FIRST.value + 6 * own;
  const bytes = below.reduce((sum, table) => sum + table.values.length, first);
  if (!kernel.tableReserve(bytes)) throw new Error(`no memory for the table ${material} (${bytes} bytes)`);
  let start = first;
  for (const { name, values } of below) {
    new Uint8Array(kernel.memory.buffer, start, values.length).set(values);
    kernel.tableKnow(materialCode(name), start, placesOf(name));
    start += values.length;
  }
  kernel.tableReady();
}

/**
 * The bytes of the table, header included, or null where `shouldStop` ended the work. Cost: well
 * under a second for three men, a few seconds for four; memory 6 bytes a place of the table (25 MB,
 * with pawns 50 MB) and the tables below it, freed with the kernel instance at the end.
 */
export function generateTable(material: Material, build: TableBuild): Uint8Array | null {
  if (parseMaterial(material) === null) throw new Error(`no table is called ${material}`);
  const kernel = loadTableKernel();
  placeTables(kernel, material, build);
  const places = placesOf(material);
  let done = 0;
  const goesOn = (): boolean => {
    if (build.shouldStop?.() === true) return false;
    done += 1;
    build.onProgress?.({
      stage: 'table',
      done,
      total: Math.max(done, 2 * SLICES + 20),
      nodes: done * places,
    });
    return true;
  };
  for (const pass of [kernel.tableMark, kernel.tableCount]) {
    for (let slice = 0; slice < SLICES; slice++) {
      if (!goesOn()) return null;
      pass((places / SLICES) * slice, (places / SLICES) * (slice + 1));
    }
  }
  for (let distance = 1; distance < 127; distance++) {
    if (!goesOn()) return null;
    if (kernel.tableStep(distance) < 0) break;
  }
  const table = new Uint8Array(TABLE_HEADER + 2 * places);
  table.set(new Uint8Array(kernel.memory.buffer, kernel.TABLE_FIRST.value, 2 * places), TABLE_HEADER);
  return sealTable(material, table);
}
