// What has the book to find out? A question is a position and the moves to judge there.

import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Uci } from '#lib/rules/move.ts';
import type { Position } from '#lib/rules/position.ts';
import { bookPosition } from '#lib/rules/position-key.ts';
import { writeUci } from '#lib/rules/uci.ts';
import type { Lacking } from './book-row.ts';
import type { SolutionBook } from './solution-book.ts';

/** Moves of one position to be judged. */
export interface Question {
  /** The position under which the verdicts are kept, made whole with clocks: see `verifiedFen`. */
  readonly fen: string;
  readonly position: string;
  readonly movesLeft: number | null;
  readonly moves: readonly Uci[];
}

/**
 * The FEN that the engine is asked about: a key is judged without the clock under which it happened to
 * arise, so that the verdict is the same whatever game led there (rules V0, V5); from a half-move clock
 * of 80 on, the clock is part of the key.
 */
export function verifiedFen(position: string): string {
  const fields = position.split(' ');
  return `${fields.slice(0, 4).join(' ')} ${fields[4] ?? '0'} 1`;
}

/** The question for every legal move of a position that the book has no verdict on, or null where it has all. */
export function askAll(position: Position, movesLeft: number | null, book: SolutionBook): Question | null {
  const key = bookPosition(position);
  const moves = legalMoves(position)
    .map(writeUci)
    .filter((move) => book.find({ position: key, movesLeft, move }) === null);
  return moves.length === 0 ? null : { fen: verifiedFen(key), position: key, movesLeft, moves };
}

/** What an answer lacks, one question a position, in the order of their first coming. */
export function questionsOf(lacking: readonly Lacking[]): Question[] {
  const places = new Map<string, Question & { moves: Uci[] }>();
  for (const { fen, position, movesLeft, move } of lacking) {
    const place = `${position}|${movesLeft}`;
    const question = places.get(place) ?? { fen, position, movesLeft, moves: [] };
    if (!question.moves.includes(move)) question.moves.push(move);
    places.set(place, question);
  }
  return [...places.values()];
}
