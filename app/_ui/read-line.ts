// A line as it was read, made ready to print: moves with numbers, gaps left open (rule R8: no reply is filled in).

import type { Reading, ReadLine, ReadResult } from '#lib/reading/reading.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Move } from '#lib/rules/move.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { findUci } from '#lib/rules/uci.ts';
import { longMove, shortMove } from './board/answer-line.ts';

/** One thing in a printed line: a move, or a reply that was not given. */
export type PrintedMove =
  | {
      readonly kind: 'move';
      readonly uci: string;
      readonly text: string;
      readonly by: 'solver' | 'defender';
      /** Move number from 1, and whether the second move of its number begins here. */
      readonly number: number;
      readonly isSecond: boolean;
    }
  | { readonly kind: 'gap' };

/** A line made ready, with the position it surely leads to: that before the first gap. */
export interface PrintedLine {
  readonly moves: readonly PrintedMove[];
  readonly position: Position;
  readonly lastMove: string | null;
  readonly hasGap: boolean;
}

/**
 * The readings that have a move to show; where none has, those of the turned board (rule R14). A text whose first
 * move cannot be played is one reading without a line.
 */
export function readingsToShow(read: ReadResult): {
  readonly lines: readonly Reading[];
  readonly isTurned: boolean;
} {
  const lines = read.readings.filter(({ line }) => line.length > 0);
  if (lines.length > 0) return { lines, isTurned: false };
  return { lines: read.turned, isTurned: read.turned.length > 0 };
}

/**
 * Prints a line read from the solver's position. Up to the first gap moves stand in short notation; after it the
 * position is not known, and they stand with both squares, which no reply can change.
 */
export function printLine(start: Position, line: ReadLine, letters: string): PrintedLine {
  const moves: PrintedMove[] = [];
  let sure: Position = start;
  let lastMove: string | null = null;
  let hasGap = false;
  let current: Position | null = start;
  let ply = start.turn === 'w' ? 0 : 1;
  for (const { uci, by } of line) {
    if (by !== (ply % 2 === (start.turn === 'w' ? 0 : 1) ? 'solver' : 'defender')) {
      moves.push({ kind: 'gap' });
      hasGap = true;
      current = current === null ? null : afterSomeReply(current, uci);
      ply += 1;
    }
    const move: Move | null = current === null ? null : findUci(current, uci);
    const text =
      move === null || current === null
        ? uci
        : hasGap
          ? afterGap(move, letters)
          : shortMove(current, move, letters);
    moves.push({ kind: 'move', uci, text, by, number: 1 + Math.floor(ply / 2), isSecond: ply % 2 === 1 });
    current = move === null || current === null ? null : playMove(current, move);
    if (!hasGap && current !== null) {
      sure = current;
      lastMove = uci;
    }
    ply += 1;
  }
  return { moves, position: sure, lastMove, hasGap };
}

/** Both squares and nothing else: whether something is taken depends on the reply that was left out. */
function afterGap(move: Move, letters: string): string {
  return longMove(move, letters).replace('×', '–');
}

/** Some position, after a reply, in which the move is legal: only the man that moves is taken from it. */
function afterSomeReply(position: Position, uci: string): Position | null {
  for (const reply of legalMoves(position)) {
    const after = playMove(position, reply);
    if (findUci(after, uci) !== null) return after;
  }
  return null;
}

/** The same as plain text, for titles and data: `1 Rh1 … 2 Qb1`. */
export function plainLine(line: PrintedLine): string {
  let text = '';
  let afterGap = true;
  for (const one of line.moves) {
    if (one.kind === 'gap') {
      text += ' …';
      afterGap = true;
      continue;
    }
    const number = !one.isSecond ? `${one.number} ` : afterGap ? `${one.number}… ` : '';
    text += ` ${number}${one.text}`;
    afterGap = false;
  }
  return text.trim();
}
