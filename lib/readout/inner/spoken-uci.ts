// A move in UCI form, said aloud at its place in a line.

import type { Uci } from '#lib/rules/move.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { findUci, playUci } from '#lib/rules/uci.ts';
import type { Locale } from '#lib/words/locale.ts';
import { spokenMove } from '#lib/words/spoken-moves.ts';

/** The move as spoken words after the moves before it; throws where the line is not legal. */
export function spokenUci(fen: string, before: readonly Uci[], uci: Uci, locale: Locale): string {
  const position = positionAfter(fen, before);
  const move = findUci(position, uci);
  if (move === null) throw new Error(`not legal on the sheet: ${[...before, uci].join(' ')} from ${fen}`);
  return spokenMove(position, move, locale);
}

/** The position after a line of UCI moves. */
export function positionAfter(fen: string, line: readonly Uci[]): Position {
  const start = parseFen(fen);
  if (!start.ok) throw new Error(`sheet of a position that is none: ${fen}`);
  return line.reduce((position, uci) => {
    const next = playUci(position, uci);
    if (next === null) throw new Error(`not legal on the sheet: ${line.join(' ')} from ${fen}`);
    return next;
  }, start.value);
}

/** The sentence with a capital at its beginning. */
export function capitalised(sentence: string, locale: Locale): string {
  const [first = ''] = sentence;
  return first.toLocaleUpperCase(locale) + sentence.slice(first.length);
}
