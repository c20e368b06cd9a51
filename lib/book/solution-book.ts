// What is known about a puzzle? The verdicts of its book under their keys, rulings beside them. Rules V6, V8.

import type { Uci } from '#lib/rules/move.ts';
import type { BookKey, BookRow, Ruling } from './book-row.ts';

/**
 * Reason of a ruling that nobody argued for: the host revealed with the move still unclear, so that it
 * counts as holding (rule V8). A code, so that it can be told in the reader's language.
 */
export const BENEFIT_OF_DOUBT = 'benefit-of-doubt';

/** The verdicts of one puzzle. It only grows; transpositions meet because a key is a position (rule V6). */
export interface SolutionBook {
  /** The engine whose verdicts these are; empty while there are none. */
  readonly version: string;
  /** Rows and rulings so far; whoever keeps something worked out from the book compares it. */
  readonly size: number;
  find(key: BookKey): BookRow | null;
  ruling(key: BookKey): Ruling | null;
  /** Every verdict on a move in this position, in the order of their coming. */
  rowsAt(position: string, movesLeft: number | null): readonly BookRow[];
  rows(): readonly BookRow[];
  /** A row under a key that is taken stays out: the first verdict of a version is the verdict. */
  add(rows: readonly BookRow[]): void;
  addRulings(rulings: readonly Ruling[]): void;
}

/** A book from stored rows and rulings. Looking up costs two map look-ups. */
export function createBook(rows: readonly BookRow[], rulings: readonly Ruling[] = []): SolutionBook {
  const places = new Map<string, Map<Uci, BookRow>>();
  const ruled = new Map<string, Ruling>();
  const all: BookRow[] = [];
  let version = '';

  function add(more: readonly BookRow[]): void {
    for (const row of more) {
      const place = placeOf(row.position, row.movesLeft);
      const moves = places.get(place) ?? new Map<Uci, BookRow>();
      if (moves.has(row.move)) continue;
      places.set(place, moves.set(row.move, row));
      all.push(row);
      if (version === '') version = row.engineVersion;
    }
  }

  /** The last ruling on a move is in force. */
  function addRulings(more: readonly Ruling[]): void {
    for (const ruling of more)
      ruled.set(`${placeOf(ruling.position, ruling.movesLeft)} ${ruling.move}`, ruling);
  }

  add(rows);
  addRulings(rulings);
  return {
    get version() {
      return version;
    },
    get size() {
      return all.length + ruled.size;
    },
    find: ({ position, movesLeft, move }) => places.get(placeOf(position, movesLeft))?.get(move) ?? null,
    ruling: ({ position, movesLeft, move }) =>
      ruled.size === 0 ? null : (ruled.get(`${placeOf(position, movesLeft)} ${move}`) ?? null),
    rowsAt: (position, movesLeft) => [...(places.get(placeOf(position, movesLeft))?.values() ?? [])],
    rows: () => all,
    add,
    addRulings,
  };
}

function placeOf(position: string, movesLeft: number | null): string {
  return movesLeft === null ? position : `${position}|${movesLeft}`;
}
