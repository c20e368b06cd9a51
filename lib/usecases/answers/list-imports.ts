// The imports of a puzzle and what each brought.

import { db } from '#lib/store/client.ts';
import { listImports } from '#lib/store/imports.ts';
import { oneOf } from '#lib/store/one-of.ts';

/** One import in the list. */
export interface PuzzleImport {
  readonly id: number;
  readonly sourceName: string;
  readonly fileName: string | null;
  readonly state: 'waiting' | 'done' | 'failed';
  readonly added: number;
  readonly known: number;
  readonly edited: number;
  readonly refused: number;
  readonly createdAt: Date;
}

/** Imports, newest first. The caller has made sure that the puzzle is the host's. */
export async function listPuzzleImports(puzzleId: number): Promise<PuzzleImport[]> {
  const rows = await listImports(db(), puzzleId);
  return rows.map((row) => ({
    id: row.id,
    sourceName: row.source.name,
    fileName: row.fileName,
    state: oneOf(['waiting', 'done', 'failed'], row.state),
    added: row.newCount,
    known: row.knownCount,
    edited: row.editedCount,
    refused: Array.isArray(row.refused) ? row.refused.length : 0,
    createdAt: row.createdAt,
  }));
}
