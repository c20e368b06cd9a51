// What an upload holds, shown before anything is stored: every row is read, the first two hundred are
// shown with what the reader makes of them, and which of them are known already.

import { type CommentRecord, commentKey, type RecordReason } from '#lib/intake/comment-record.ts';
import type { ColumnMap } from '#lib/intake/map-comment-rows.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { formatOf, type TableFormat } from '#lib/machine/csv-rows.ts';
import { sha256 } from '#lib/machine/hash.ts';
import { tameName } from '#lib/people/names.ts';
import { readText } from '#lib/reading/read-text.ts';
import type { ReadLine } from '#lib/reading/reading.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { db } from '#lib/store/client.ts';
import { findKnownComments } from '#lib/store/comments.ts';
import { findSource } from '#lib/store/imports.ts';
import { loadPuzzle } from '#lib/store/puzzles.ts';
import { readUpload, type UploadReason } from './read-upload.ts';

/** One comment of the preview. */
export interface PreviewRow {
  readonly row: number;
  readonly author: string | null;
  readonly text: string;
  readonly at: CommentRecord['at'];
  readonly kind: 'answer' | 'unreadable' | 'chatter';
  /** Main line of the first reading; null where there is none. */
  readonly line: ReadLine | null;
  readonly readings: number;
  readonly isKnown: boolean;
}

/** The format of a file by its name and beginning. */
export function uploadFormatOf(fileName: string, beginning: string): TableFormat {
  return formatOf(fileName, beginning);
}

/** The upload as the form holds it. */
export type UploadToRead = Parameters<typeof readUpload>[0];

/** What was read. */
export interface CommentsPreview {
  /** Heads of the columns; empty for a paste. */
  readonly heads: readonly string[];
  readonly columns: ColumnMap | null;
  /** The first rows, at most 200. */
  readonly rows: readonly PreviewRow[];
  readonly comments: number;
  readonly withoutTime: number;
  /** Rows that are no comments, at most 50 of them, and how many in all. */
  readonly refused: readonly RecordReason[];
  readonly refusedCount: number;
}

const SHOWN = 200;
const SHOWN_REFUSED = 50;

/** Reads an upload for a puzzle and stores nothing. */
export async function previewComments(
  asked: UploadToRead & { readonly puzzleId: number; readonly sourceName: string },
): Promise<Result<CommentsPreview, UploadReason | { readonly code: 'unknown-puzzle' }>> {
  const puzzle = await loadPuzzle(db(), { id: asked.puzzleId });
  const start = puzzle === null ? null : parseFen(puzzle.terms.fen);
  if (puzzle === null || start === null || !start.ok) return refuse({ code: 'unknown-puzzle' });
  const opened = await readUpload(asked);
  if (!opened.ok) return opened;
  const first: { row: number; record: CommentRecord }[] = [];
  const refused: RecordReason[] = [];
  let comments = 0;
  let withoutTime = 0;
  let refusedCount = 0;
  for await (const one of opened.value.rows) {
    // A damaged file ends here: nothing of it may be stored.
    if (!one.ok) return one;
    const { row, record, reason } = one.value;
    if (record === null) {
      refusedCount += 1;
      if (refused.length < SHOWN_REFUSED) refused.push(reason);
      continue;
    }
    comments += 1;
    if (record.at === null) withoutTime += 1;
    if (first.length < SHOWN) first.push({ row, record });
  }
  const known = await knownAmong(
    puzzle,
    asked.sourceName,
    first.map(({ record }) => record),
  );
  const rows = first.map(({ row, record }): PreviewRow => {
    const { kind, readings } = readText({ position: start.value, text: record.text });
    const author = record.author === null ? null : tameName(record.author);
    const isKnown = known.has(sha256(commentKey(record)));
    const { text, at } = record;
    return {
      row,
      author,
      text,
      at,
      kind,
      line: readings[0]?.line ?? null,
      readings: readings.length,
      isKnown,
    };
  });
  const { heads, columns } = opened.value;
  return ok({ heads: heads ?? [], columns, rows, comments, withoutTime, refused, refusedCount });
}

async function knownAmong(
  puzzle: { readonly id: number; readonly showId: number },
  sourceName: string,
  records: readonly CommentRecord[],
): Promise<ReadonlySet<string>> {
  const sourceId = await findSource(db(), puzzle.showId, sourceName);
  if (sourceId === null) return new Set();
  const ids = records.map((record) => sha256(commentKey(record)));
  return new Set((await findKnownComments(db(), sourceId, puzzle.id, ids)).keys());
}
