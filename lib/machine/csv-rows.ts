// Bytes of an upload become rows of cells. Everything is bounded before it is believed: size of a
// record, number of columns, encoding; what cannot be read is named with its row (trust test A20).
import { parse } from 'csv-parse';
import { cellsUnder, parseJsonRow } from '#lib/intake/parse-json-row.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';

export type TableFormat = 'csv' | 'tsv' | 'jsonl';

export interface TableRow {
  /** Row from 1, the head included (JSON Lines: line from 2, so that the heads count as row 1). */
  readonly row: number;
  readonly cells: readonly string[];
}

export type TableReason =
  | { readonly code: 'file-empty' }
  | { readonly code: 'file-too-long'; readonly mostBytes: number }
  | { readonly code: 'file-is-compressed' }
  | { readonly code: 'not-text'; readonly row: number }
  | { readonly code: 'row-too-long'; readonly row: number; readonly mostBytes: number }
  | { readonly code: 'too-many-columns'; readonly row: number; readonly most: number }
  | { readonly code: 'open-quote'; readonly row: number }
  | { readonly code: 'bad-quote'; readonly row: number }
  | { readonly code: 'not-json'; readonly row: number }
  | { readonly code: 'not-an-object'; readonly row: number };

/** A head and a way through the rows; a reason ends the rows. */
export interface Table {
  readonly heads: readonly string[];
  readonly rows: AsyncGenerator<Result<TableRow, TableReason>, void, undefined>;
}

export const MOST_UPLOAD_BYTES = 64 * 1024 * 1024;
const MOST_RECORD_BYTES = 256 * 1024;
const MOST_COLUMNS = 200;

/** Opens an upload: finds its encoding and separator, reads the heads, and leaves the rows to be drawn one by one. */
export async function openTable(bytes: Uint8Array, format: TableFormat): Promise<Result<Table, TableReason>> {
  if (bytes.length > MOST_UPLOAD_BYTES)
    return refuse({ code: 'file-too-long', mostBytes: MOST_UPLOAD_BYTES });
  if (bytes[0] === 0x1f && bytes[1] === 0x8b) return refuse({ code: 'file-is-compressed' });
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return refuse({ code: 'file-is-compressed' });
  const text = decode(bytes);
  if (text === null) return refuse({ code: 'not-text', row: 1 });
  if (text.trim() === '') return refuse({ code: 'file-empty' });
  const rows =
    format === 'jsonl' ? jsonRows(text) : csvRows(text, format === 'tsv' ? '\t' : separatorOf(text));
  const first = await rows.next();
  if (first.done) return refuse({ code: 'file-empty' });
  if (!first.value.ok) return refuse(first.value.reason);
  return ok({ heads: first.value.value.cells, rows });
}

/** The format that a file's name or beginning tells. */
export function formatOf(fileName: string, beginning: string): TableFormat {
  if (/\.(jsonl|ndjson)$/i.test(fileName)) return 'jsonl';
  if (/\.(tsv|tab)$/i.test(fileName)) return 'tsv';
  return beginning.trimStart().startsWith('{') ? 'jsonl' : 'csv';
}

function decode(bytes: Uint8Array): string | null {
  const encoding =
    bytes[0] === 0xff && bytes[1] === 0xfe
      ? 'utf-16le'
      : bytes[0] === 0xfe && bytes[1] === 0xff
        ? 'utf-16be'
        : 'utf-8';
  try {
    const text = new TextDecoder(encoding, { fatal: true }).decode(bytes);
    return text.includes('\0') ? null : text;
  } catch {
    return null;
  }
}

function separatorOf(text: string): string {
  const head = text.slice(0, 10_000).split(/\r|\n/, 1)[0] ?? '';
  const count = (sign: string): number => head.split(sign).length;
  return [',', ';', '\t'].reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}

async function* csvRows(
  text: string,
  delimiter: string,
): AsyncGenerator<Result<TableRow, TableReason>, void, undefined> {
  const parser = parse({
    delimiter,
    bom: true,
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: true,
    max_record_size: MOST_RECORD_BYTES,
    info: true,
  });
  // Fed in pieces with back-pressure: a record that never ends is refused at its bound.
  const feed = async (): Promise<void> => {
    for (let at = 0; at < text.length && !parser.destroyed; at += 65_536) {
      if (!parser.write(text.slice(at, at + 65_536))) await drained(parser);
    }
    if (!parser.destroyed) parser.end();
  };
  const feeding = feed();
  let row = 0;
  try {
    for await (const item of parser) {
      row += 1;
      const cells = cellsOf(item);
      if (cells.length > MOST_COLUMNS) {
        yield refuse({ code: 'too-many-columns', row, most: MOST_COLUMNS });
        return;
      }
      yield ok({ row, cells });
    }
  } catch (error) {
    yield refuse(reasonOf(error, row));
  } finally {
    parser.destroy();
    await feeding;
  }
}

function drained(parser: ReturnType<typeof parse>): Promise<void> {
  return new Promise((resolve) => {
    const done = (): void => {
      for (const event of ['drain', 'close', 'error']) parser.off(event, done);
      resolve();
    };
    for (const event of ['drain', 'close', 'error']) parser.on(event, done);
  });
}

async function* jsonRows(text: string): AsyncGenerator<Result<TableRow, TableReason>, void, undefined> {
  let heads: string[] | null = null;
  let row = 1;
  for (const line of linesOf(text)) {
    if (line.trim() === '') continue;
    row += 1;
    if (line.length > MOST_RECORD_BYTES) {
      yield refuse({ code: 'row-too-long', row, mostBytes: MOST_RECORD_BYTES });
      return;
    }
    const fields = parseJsonRow(line, row);
    if (!fields.ok) {
      yield refuse(fields.reason);
      return;
    }
    if (heads === null) {
      heads = [...fields.value.keys()];
      yield ok({ row: 1, cells: heads });
    }
    yield ok({ row, cells: cellsUnder(heads, fields.value) });
  }
}

function* linesOf(text: string): Generator<string> {
  let start = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  while (start < text.length) {
    const end = text.indexOf('\n', start);
    yield text.slice(start, end < 0 ? text.length : end);
    start = end < 0 ? text.length : end + 1;
  }
}

function cellsOf(item: unknown): string[] {
  const record = typeof item === 'object' && item !== null && 'record' in item ? item.record : null;
  return Array.isArray(record) ? record.map((cell) => String(cell)) : [];
}

// A broken stream drops rows that were parsed and not yet drawn: the parser's own count is the truth.
function reasonOf(error: unknown, drawn: number): TableReason {
  const code = typeof error === 'object' && error !== null && 'code' in error ? error.code : null;
  const parsed = typeof error === 'object' && error !== null && 'records' in error ? error.records : null;
  const row = Math.max(drawn, typeof parsed === 'number' ? parsed : 0) + 1;
  if (code === 'CSV_MAX_RECORD_SIZE') return { code: 'row-too-long', row, mostBytes: MOST_RECORD_BYTES };
  if (code === 'CSV_QUOTE_NOT_CLOSED') return { code: 'open-quote', row };
  if (code === 'INVALID_OPENING_QUOTE' || code === 'CSV_INVALID_CLOSING_QUOTE')
    return { code: 'bad-quote', row };
  throw error;
}
