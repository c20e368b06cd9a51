// What is a comment, whatever file or paste it came in?

/** An interval of time, both ends included; one moment where both are equal. */
export interface StatedTime {
  readonly from: Date;
  readonly to: Date;
}

/** One comment as its source gives it. */
export interface CommentRecord {
  /** The author as the source writes it, NFC; null where it names none. */
  readonly author: string | null;
  readonly text: string;
  /** When the source says it was written (rule P2); null where it does not say. */
  readonly at: StatedTime | null;
  /** The source's own id; null where it has none. */
  readonly externalId: string | null;
  readonly link: string | null;
  /** The source says that the text was changed after it was first written. */
  readonly isEdited: boolean;
  /** The source says that it is a reply to another comment (rule P4). */
  readonly isReply: boolean;
}

/** Longest text of one comment, in UTF-16 units; longer ones are refused, not cut. */
export const LONGEST_COMMENT = 20_000;

/** Why a block or row is no comment; `row` counts rows or lines of the source from 1. */
export type RecordReason =
  | { readonly code: 'no-text'; readonly row: number }
  | { readonly code: 'no-author'; readonly row: number }
  | { readonly code: 'too-long'; readonly row: number; readonly most: number }
  | { readonly code: 'bad-time'; readonly row: number; readonly column: string; readonly found: string }
  | { readonly code: 'no-such-column'; readonly row: number; readonly column: string };

/**
 * What makes two comments of one source the same: its own id, else its link, else author, exact time
 * and text. A coarse time is left out, because "2 days ago" is "3 days ago" in tomorrow's export.
 */
export function commentKey(record: CommentRecord): string {
  if (record.externalId !== null) return `id\n${record.externalId}`;
  if (record.link !== null) return `link\n${record.link}`;
  const isExact = record.at !== null && record.at.from.getTime() === record.at.to.getTime();
  const time = isExact && record.at !== null ? record.at.from.toISOString() : '';
  return `text\n${record.author ?? ''}\n${time}\n${record.text}`;
}
