// A paste or an uploaded file as a row of comments, one by one: the preview and the import read with
// the same eyes.

import type { CommentRecord, RecordReason } from '#lib/intake/comment-record.ts';
import {
  type ColumnMap,
  checkColumns,
  findColumns,
  type HeadReason,
  mapCommentRow,
} from '#lib/intake/map-comment-rows.ts';
import { type PasteReason, parsePastedBlock } from '#lib/intake/parse-pasted-block.ts';
import type { TimeFrame } from '#lib/intake/parse-stated-time.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { openTable, type TableReason } from '#lib/machine/csv-rows.ts';
import type { ImportFormat } from '#lib/store/imports.ts';

/** What is to be read, and how. Columns null: found by their heads. */
export interface Upload {
  readonly bytes: Uint8Array;
  readonly format: ImportFormat;
  readonly columns: ColumnMap | null;
  readonly frame: TimeFrame;
}

/** Why an upload as a whole is not taken: nothing of it is then stored. */
export type UploadReason = PasteReason | HeadReason | TableReason;

/** One row: a comment, or why it is none. */
export type ReadRow =
  | { readonly row: number; readonly record: CommentRecord; readonly reason: null }
  | { readonly row: number; readonly record: null; readonly reason: RecordReason };

/** An upload that can be read: heads and columns (both null for a paste), and its rows. */
export interface OpenUpload {
  readonly heads: readonly string[] | null;
  readonly columns: ColumnMap | null;
  readonly rows: AsyncGenerator<Result<ReadRow, UploadReason>, void, undefined>;
}

/** Opens an upload. A damaged row further down ends the rows with a reason. */
export async function readUpload(upload: Upload): Promise<Result<OpenUpload, UploadReason>> {
  if (upload.format === 'pasted') return readPaste(upload);
  const table = await openTable(upload.bytes, upload.format);
  if (!table.ok) return table;
  const { heads, rows } = table.value;
  const columns = upload.columns === null ? findColumns(heads) : checkColumns(upload.columns, heads.length);
  if (!columns.ok) {
    await rows.return();
    return columns;
  }
  const how = { columns: columns.value, frame: upload.frame };
  async function* mapped(): AsyncGenerator<Result<ReadRow, UploadReason>, void, undefined> {
    for await (const one of rows) {
      if (!one.ok) {
        yield one;
        return;
      }
      const { row, cells } = one.value;
      const record = mapCommentRow(cells, row, how);
      yield ok(
        record.ok
          ? { row, record: record.value, reason: null }
          : { row, record: null, reason: record.reason },
      );
    }
  }
  return ok({ heads, columns: columns.value, rows: mapped() });
}

function readPaste(upload: Upload): Result<OpenUpload, UploadReason> {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(upload.bytes);
  } catch {
    return refuse({ code: 'not-text', row: 1 });
  }
  const read = parsePastedBlock(text.replaceAll('\0', '\ufffd'), upload.frame);
  if (!read.ok) return read;
  const rows: ReadRow[] = [
    ...read.value.records.map(({ row, record }) => ({ row, record, reason: null })),
    ...read.value.refused.map((reason) => ({ row: reason.row, record: null, reason })),
  ];
  rows.sort((a, b) => a.row - b.row);
  async function* one(): AsyncGenerator<Result<ReadRow, UploadReason>, void, undefined> {
    for (const row of rows) yield ok(row);
  }
  return ok({ heads: null, columns: null, rows: one() });
}
