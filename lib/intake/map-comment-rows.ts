// Which column of an upload is what, and what comment is a row? Columns are found by their heads and
// may be set by the host; a row that cannot be used is named with its number.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { unguardCell } from '#lib/kit/spreadsheet-cell.ts';
import { type CommentRecord, LONGEST_COMMENT, type RecordReason } from './comment-record.ts';
import { parseStatedTime, saysEdited, type TimeFrame } from './parse-stated-time.ts';

/** The parts of a comment that a column can hold. */
export type CommentColumn = 'author' | 'text' | 'time' | 'link' | 'id' | 'reply';

/** Which column (from 0) holds what; null where the upload has none. `text` is needed. */
export interface ColumnMap {
  readonly author: number | null;
  readonly text: number;
  readonly time: number | null;
  readonly link: number | null;
  readonly id: number | null;
  readonly reply: number | null;
}

// Heads as exports of comment pages and forms call them, in English and German.
const HEADS: Readonly<Record<CommentColumn, readonly string[]>> = {
  author: ['author', 'name', 'user', 'username', 'from', 'autor', 'verfasser', 'von', 'authordisplayname'],
  text: [
    'text',
    'comment',
    'answer',
    'message',
    'body',
    'content',
    'kommentar',
    'antwort',
    'nachricht',
    'textdisplay',
  ],
  time: [
    'time',
    'date',
    'at',
    'published',
    'publishedat',
    'created',
    'createdat',
    'timestamp',
    'zeit',
    'datum',
    'zeitpunkt',
  ],
  link: ['link', 'url', 'address', 'permalink', 'adresse'],
  id: ['id', 'commentid', 'cid', 'externalid', 'kommentarid'],
  reply: ['reply', 'replyto', 'parent', 'parentid', 'isreply', 'antwortauf'],
};

/** Why no columns can be mapped from a head row. */
export type HeadReason =
  | { readonly code: 'no-text-column'; readonly heads: readonly string[] }
  | { readonly code: 'doubled-column'; readonly head: string }
  | { readonly code: 'column-out-of-range'; readonly column: CommentColumn; readonly columns: number };

/** The columns as the heads name them. Two columns with one meaning are refused: guessing would lose one. */
export function findColumns(heads: readonly string[]): Result<ColumnMap, HeadReason> {
  const found = new Map<CommentColumn, number>();
  for (const [place, head] of heads.entries()) {
    const plain = head
      .normalize('NFKC')
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]/gu, '');
    const column = columnFor(plain);
    if (column === null) continue;
    if (found.has(column)) return refuse({ code: 'doubled-column', head: head.slice(0, 60) });
    found.set(column, place);
  }
  const text = found.get('text');
  if (text === undefined)
    return refuse({ code: 'no-text-column', heads: heads.slice(0, 12).map((head) => head.slice(0, 60)) });
  const at = (column: CommentColumn): number | null => found.get(column) ?? null;
  return ok({
    author: at('author'),
    text,
    time: at('time'),
    link: at('link'),
    id: at('id'),
    reply: at('reply'),
  });
}

/** Checks a map that the host has set against the number of columns. */
export function checkColumns(map: ColumnMap, columns: number): Result<ColumnMap, HeadReason> {
  for (const column of ['author', 'text', 'time', 'link', 'id', 'reply'] as const) {
    const place = map[column];
    if (place !== null && (!Number.isInteger(place) || place < 0 || place >= columns)) {
      return refuse({ code: 'column-out-of-range', column, columns });
    }
  }
  return ok(map);
}

/**
 * The comment in one row (`row` counts from 1 with the head as row 1), or the reason why it is none.
 * One spreadsheet guard is taken off each cell. A time that cannot be understood is a reason, not a
 * missing time, because a wrong guess could make an answer late.
 */
export function mapCommentRow(
  cells: readonly string[],
  row: number,
  how: { readonly columns: ColumnMap; readonly frame: TimeFrame },
): Result<CommentRecord, RecordReason> {
  const { columns, frame } = how;
  const cell = (place: number | null): string =>
    place === null
      ? ''
      : unguardCell(cells[place] ?? '')
          .normalize('NFC')
          .trim();
  if (columns.text >= cells.length) return refuse({ code: 'no-such-column', row, column: 'text' });
  const text = cell(columns.text);
  if (text === '') return refuse({ code: 'no-text', row });
  if (text.length > LONGEST_COMMENT) return refuse({ code: 'too-long', row, most: LONGEST_COMMENT });
  const timeText = cell(columns.time);
  const at = timeText === '' ? null : parseStatedTime(timeText, frame);
  if (timeText !== '' && at === null) {
    return refuse({ code: 'bad-time', row, column: 'time', found: timeText.slice(0, 60) });
  }
  const reply = cell(columns.reply).toLowerCase();
  return ok({
    author: cell(columns.author) || null,
    text,
    at,
    externalId: cell(columns.id).slice(0, 200) || null,
    link: cell(columns.link).slice(0, 2000) || null,
    isEdited: saysEdited(timeText),
    isReply: !['', '0', 'false', 'no', 'nein'].includes(reply),
  });
}

function columnFor(plainHead: string): CommentColumn | null {
  for (const column of ['author', 'text', 'time', 'link', 'id', 'reply'] as const) {
    if (HEADS[column].includes(plainHead)) return column;
  }
  return null;
}
