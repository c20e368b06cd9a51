// Does a person have to look at this mark, and along with which others? Doubtful answers are grouped
// by position and move, by text, or by the characters that could not be read.

import type { BookKey } from '#lib/book/book-row.ts';
import { movesLeftAtStart } from '#lib/book/claim.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { sha256 } from '#lib/machine/hash.ts';
import type { Mark } from '#lib/marking/mark.ts';
import type { ReadResult } from '#lib/reading/reading.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { bookPosition } from '#lib/rules/position-key.ts';
import { playUci } from '#lib/rules/uci.ts';

/** The text as groups compare it: case and blanks do not matter. */
export function plainText(text: string): string {
  return text.normalize('NFKC').toLowerCase().replace(/\s+/g, ' ').trim();
}

/** Hash under which a ruling on a text is kept. */
export function textHash(text: string): string {
  return sha256(plainText(text));
}

/** Stands in the place of a hash for all texts that read only with the board turned (rule R14). */
export const TURNED_TEXTS = 'turned';

/** A solver move in its position. */
export interface MovePlace {
  readonly position: string;
  readonly move: string;
  readonly solverMovesBefore: number;
}

/** The move whose verdict is unclear; null where the line has none. */
export function findUnclearMove(fen: string, mark: Pick<Mark, 'line' | 'verdicts'>): MovePlace | null {
  const start = parseFen(fen);
  if (!start.ok || mark.line === null) return null;
  const verdicts = [...mark.verdicts];
  let position = start.value;
  for (const [ply, move] of mark.line.entries()) {
    if (ply % 2 === 0 && verdicts.shift()?.verdict === 'unclear')
      return { position: bookPosition(position), move, solverMovesBefore: ply / 2 };
    const next = playUci(position, move);
    if (next === null) return null;
    position = next;
  }
  return null;
}

/** Where in the book the unclear move lies; null where the line has none. */
export function unclearKey(terms: PuzzleTerms, mark: Pick<Mark, 'line' | 'verdicts'>): BookKey | null {
  const place = findUnclearMove(terms.fen, mark);
  if (place === null) return null;
  const { position, move, solverMovesBefore } = place;
  const atStart = movesLeftAtStart({ ...terms, published: [] });
  return { position, movesLeft: atStart === null ? null : atStart - solverMovesBefore, move };
}

/** A place where the readings of texts part, and the moves that they part with. */
export interface ReadingPair {
  /** Stands in the place of a text's hash: one ruling settles it for everybody (rule R6). */
  readonly key: string;
  /** The moves that all readings share. */
  readonly common: readonly string[];
  readonly moves: readonly string[];
}

/** Where the readings behind a mark part; null where they are not what is in doubt. */
export function findReadingPair(fen: string, mark: Pick<Mark, 'reason' | 'reading'>): ReadingPair | null {
  const { moves } = mark.reason.params;
  if (mark.reason.code !== 'two-readings' || !Array.isArray(moves) || moves.length < 2) return null;
  const start = parseFen(fen);
  if (!start.ok) return null;
  const common = (mark.reading ?? []).map(({ uci }) => uci);
  const parting: string[] = moves.map(String);
  const place = [bookPosition(start.value), common.join(' '), parting.join(' ')].join('|');
  return { key: sha256(place), common, moves: parting };
}

/** The group on the list of doubtful answers; null where nobody is needed. */
export function doubtKey(fen: string, text: string, mark: Mark, read: ReadResult): string | null {
  const pair = findReadingPair(fen, mark);
  if (pair !== null) return `reading ${pair.key}`;
  switch (mark.outcome) {
    case 'unclear': {
      const place = findUnclearMove(fen, mark);
      return place === null ? `unclear ${textHash(text)}` : `verdict ${place.move} ${place.position}`;
    }
    case 'ambiguous':
      return `reading ${textHash(text)}`;
    case 'unreadable': {
      if (read.turned.length > 0) return 'turned';
      const token = read.firstUnread === null ? '' : text.slice(...read.firstUnread);
      return token === '' ? `text ${textHash(text)}` : `token ${plainText(token).slice(0, 80)}`;
    }
    case 'unfinished':
      return mark.flags.includes('cut-by-source') ? `cut ${textHash(text)}` : null;
    default:
      return null;
  }
}
