// Which comments are in a pasted text? One comment a block, blocks parted by blank lines, the first
// line of a block the author.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { type CommentRecord, LONGEST_COMMENT, type RecordReason } from './comment-record.ts';
import { parseStatedTime, saysEdited, type TimeFrame } from './parse-stated-time.ts';

/** Bounds of one paste, in UTF-16 units and in comments. */
export const LONGEST_PASTE = 2_000_000;
const MOST_BLOCKS = 20_000;

/** Why a paste as a whole is refused. */
export type PasteReason =
  | { readonly code: 'paste-empty' }
  | { readonly code: 'paste-too-long'; readonly most: number }
  | { readonly code: 'too-many-comments'; readonly most: number };

/** What was found: comments with the line they begin at, and blocks that are none, in order. */
export interface PastedComments {
  readonly records: readonly { readonly row: number; readonly record: CommentRecord }[];
  readonly refused: readonly RecordReason[];
}

/**
 * Reads a paste. The first line of a block is the author ("@" before it is dropped); a second line
 * that is a time, or a time after a middle dot behind the author, is the time; the rest is the text.
 * A block of one line has no text and is reported with its line number.
 */
export function parsePastedBlock(paste: string, frame: TimeFrame): Result<PastedComments, PasteReason> {
  if (paste.trim() === '') return refuse({ code: 'paste-empty' });
  if (paste.length > LONGEST_PASTE) return refuse({ code: 'paste-too-long', most: LONGEST_PASTE });
  const blocks = splitBlocks(paste);
  if (blocks.length > MOST_BLOCKS) return refuse({ code: 'too-many-comments', most: MOST_BLOCKS });
  const records: { row: number; record: CommentRecord }[] = [];
  const refused: RecordReason[] = [];
  for (const block of blocks) {
    const read = readBlock(block, frame);
    if (read.ok) records.push({ row: block.row, record: read.value });
    else refused.push(read.reason);
  }
  return ok({ records, refused });
}

interface Block {
  readonly row: number;
  readonly lines: readonly string[];
}

function splitBlocks(paste: string): Block[] {
  const blocks: { row: number; lines: string[] }[] = [];
  let isInBlock = false;
  for (const [index, line] of paste
    .normalize('NFC')
    .split(/\r\n|\r|\n/)
    .entries()) {
    if (line.trim() === '') {
      isInBlock = false;
      continue;
    }
    if (isInBlock) blocks.at(-1)?.lines.push(line);
    else blocks.push({ row: index + 1, lines: [line] });
    isInBlock = true;
  }
  return blocks;
}

function readBlock(block: Block, frame: TimeFrame): Result<CommentRecord, RecordReason> {
  const head = readHead(block.lines[0] ?? '', frame);
  const second = block.lines[1];
  const isTimeLine = head.at === null && second !== undefined && block.lines.length > 2;
  const ownTime = isTimeLine ? parseStatedTime(second, frame) : null;
  const text = block.lines
    .slice(ownTime === null ? 1 : 2)
    .join('\n')
    .trim();
  if (head.author === '') return refuse({ code: 'no-author', row: block.row });
  if (text === '') return refuse({ code: 'no-text', row: block.row });
  if (text.length > LONGEST_COMMENT)
    return refuse({ code: 'too-long', row: block.row, most: LONGEST_COMMENT });
  return ok({
    author: head.author,
    text,
    at: head.at ?? ownTime,
    externalId: null,
    link: null,
    isEdited: head.isEdited || (ownTime !== null && saysEdited(second ?? '')),
    isReply: false,
  });
}

function readHead(
  line: string,
  frame: TimeFrame,
): { author: string; at: CommentRecord['at']; isEdited: boolean } {
  const bare = (text: string): string =>
    text
      .trim()
      .replace(/^@(?=\S)/, '')
      .replace(/:$/, '')
      .trim();
  const parts = line.split(/\s*[·•|\t]\s*/);
  const last = parts.at(-1) ?? '';
  const at = parts.length > 1 ? parseStatedTime(last, frame) : null;
  if (at === null) return { author: bare(line), at: null, isEdited: false };
  return { author: bare(parts.slice(0, -1).join(' ')), at, isEdited: saysEdited(last) };
}
