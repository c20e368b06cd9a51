// Uploads and pastes: stored as bytes first, so that a killed worker loses nothing.

import type { Tx } from './client.ts';
import { toJson } from './json.ts';
import { oneOf } from './one-of.ts';

export type ImportFormat = 'pasted' | 'csv' | 'tsv' | 'jsonl';

/** An upload as stored. */
export interface ImportRecord {
  readonly id: number;
  readonly puzzleId: number;
  readonly sourceId: number;
  readonly format: ImportFormat;
  readonly bytes: Uint8Array | null;
  readonly columns: unknown;
  readonly timeWord: 'before' | 'after' | 'unknown';
  readonly exportedAt: Date | null;
  readonly state: 'waiting' | 'done' | 'failed';
  readonly newCount: number;
  readonly knownCount: number;
  readonly editedCount: number;
  readonly refused: unknown;
  readonly memberId: number | null;
  /** When it was uploaded: what it holds was first seen then. */
  readonly createdAt: Date;
}

/** Finds or makes the place that comments come from. */
export async function ensureSource(tx: Tx, showId: number, name: string): Promise<number> {
  const where = { showId_name: { showId, name } };
  const row = await tx.source.upsert({ where, create: { showId, name }, update: {}, select: { id: true } });
  return row.id;
}

/** The place of that name; null where nothing came from it yet. */
export async function findSource(tx: Tx, showId: number, name: string): Promise<number | null> {
  const row = await tx.source.findUnique({ where: { showId_name: { showId, name } }, select: { id: true } });
  return row?.id ?? null;
}

/** Imports of a puzzle, newest first, without their bytes. */
export async function listImports(tx: Tx, puzzleId: number) {
  return tx.import.findMany({
    where: { puzzleId },
    omit: { bytes: true },
    include: { source: { select: { name: true } } },
    orderBy: { id: 'desc' },
    take: 50,
  });
}

/** Stores an upload. */
export async function appendImport(
  tx: Tx,
  upload: {
    readonly puzzleId: number;
    readonly sourceId: number;
    readonly format: ImportFormat;
    readonly fileName: string | null;
    readonly bytes: Uint8Array<ArrayBuffer>;
    readonly hash: string;
    readonly columns: unknown;
    readonly timeWord: 'before' | 'after' | 'unknown';
    readonly exportedAt: Date | null;
    readonly memberId: number | null;
  },
): Promise<number> {
  const { columns, ...rest } = upload;
  const data = { ...rest, ...(columns === null ? {} : { columns: toJson(columns) }) };
  const row = await tx.import.create({ data, select: { id: true } });
  // By the database's clock, like the reveal that it is compared with.
  await tx.$executeRaw`update import set created_at = clock_timestamp() where id = ${row.id}`;
  return row.id;
}

/** Loads an upload with its bytes; null where there is none. */
export async function loadImport(tx: Tx, id: number): Promise<ImportRecord | null> {
  const row = await tx.import.findUnique({ where: { id } });
  if (row === null) return null;
  return {
    ...row,
    format: oneOf(['pasted', 'csv', 'tsv', 'jsonl'], row.format),
    timeWord: oneOf(['before', 'after', 'unknown'], row.timeWord),
    state: oneOf(['waiting', 'done', 'failed'], row.state),
  };
}

/** Uploads not yet taken in. */
export async function listWaitingImports(tx: Tx): Promise<number[]> {
  const rows = await tx.import.findMany({ where: { state: 'waiting' }, select: { id: true } });
  return rows.map((row) => row.id);
}

/** Notes the end of an import. */
export async function saveImported(
  tx: Tx,
  id: number,
  end: {
    readonly state: 'done' | 'failed';
    readonly newCount: number;
    readonly knownCount: number;
    readonly editedCount: number;
    readonly refused: unknown;
  },
): Promise<void> {
  await tx.import.update({ where: { id }, data: { ...end, refused: toJson(end.refused) } });
  await tx.$executeRaw`update import set finished_at = clock_timestamp() where id = ${id}`;
}

/**
 * Holds an upload and its source until the end of the transaction: two that take it in at once wait for each other
 * here, and so do two uploads that bring the same new author. False where it has been taken in to its end.
 */
export async function lockImport(tx: Tx, id: number): Promise<boolean> {
  const rows = await tx.$queryRaw<{ state: string }[]>`
    select import.state from import join source on source.id = import.source_id
    where import.id = ${id} for no key update of source, import`;
  return rows[0]?.state === 'waiting';
}
