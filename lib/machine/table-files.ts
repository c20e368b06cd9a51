// Endgame tables kept as files, so that a table is built once a machine and not once a process.

import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { constants, deflateSync, inflateSync } from 'node:zlib';
import type { Material } from '#lib/engine/material.ts';
import { openTable } from '#lib/engine/table-format.ts';
import type { TableStore } from '#lib/engine/table-set.ts';

/** A longer file is not a table of ours: the largest holds 17 million positions. */
const MOST_BYTES = 20_000_000;

function readTable(path: string, material: Material): Uint8Array | null {
  try {
    const table = new Uint8Array(inflateSync(readFileSync(path), { maxOutputLength: MOST_BYTES }));
    return openTable(material, table).ok ? table : null;
  } catch {
    // Absent, cut short or damaged: the same answer, the table is built anew.
    return null;
  }
}

/**
 * A store of tables under `directory`. A file with another version, a wrong checksum or a cut end is
 * never used: it is built again and replaced. Two processes may write the same table at once; the
 * rename keeps either whole. Where the disk is full or the folder cannot be written, the table is built again
 * by the next process: it costs time, and no verdict (rule V4).
 */
export function createTableFiles(directory: string): TableStore {
  const pathOf = (material: Material): string => join(directory, `${material}.table`);
  return {
    load: (material) => readTable(pathOf(material), material),
    save: (material, table) => {
      const draft = `${pathOf(material)}.${process.pid}.${process.hrtime.bigint()}`;
      try {
        mkdirSync(directory, { recursive: true });
        writeFileSync(draft, deflateSync(table, { level: constants.Z_BEST_SPEED }));
        renameSync(draft, pathOf(material));
      } catch {
        dropDraft(draft);
      }
    },
  };
}

function dropDraft(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // Where its folder is none, there is no draft either.
  }
}
