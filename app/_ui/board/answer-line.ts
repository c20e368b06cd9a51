// The line that is being built on the board, and how it stands in the answer's text. Pure: no page, no events.

import type { Move } from '#lib/rules/move.ts';
import { playMove } from '#lib/rules/play-move.ts';
import { type Kind, type Position, squareName } from '#lib/rules/position.ts';
import { writeSan } from '#lib/rules/san.ts';
import { findUci } from '#lib/rules/uci.ts';

/** Moves from a starting position; `positions[i]` stands before `moves[i]`, the last one after all of them. */
export interface AnswerLine {
  readonly moves: readonly Move[];
  readonly positions: readonly [Position, ...Position[]];
}

/** Letters of king, queen, rook, bishop, knight in the viewer's language: "KQRBN", "KDTLS". */
export type PieceLetters = string;

const ENGLISH = 'KQRBN';

/** An empty line. */
export function startLine(start: Position): AnswerLine {
  return { moves: [], positions: [start] };
}

/** The position in which the line ends. */
export function lastPosition(line: AnswerLine): Position {
  return line.positions[line.positions.length - 1] ?? line.positions[0];
}

/** The line with a legal move of its last position added. */
export function extendLine(line: AnswerLine, move: Move): AnswerLine {
  return {
    moves: [...line.moves, move],
    positions: [...line.positions, playMove(lastPosition(line), move)],
  };
}

/** The line without its last move. */
export function shortenLine(line: AnswerLine): AnswerLine {
  if (line.moves.length === 0) return line;
  const [first, ...rest] = line.positions;
  return { moves: line.moves.slice(0, -1), positions: [first, ...rest.slice(0, -1)] };
}

/** The line of these moves, or null where one of them cannot be played: a gap, or another puzzle's move. */
export function lineOf(start: Position, ucis: readonly string[]): AnswerLine | null {
  let line = startLine(start);
  for (const uci of ucis) {
    const move = findUci(lastPosition(line), uci);
    if (move === null) return null;
    line = extendLine(line, move);
  }
  return line;
}

/** One move in short notation with the viewer's letters: `Tdh1`, `exd8=D+`. */
export function shortMove(position: Position, move: Move, letters: PieceLetters): string {
  const san = writeSan(position, move);
  if (move.castle !== null) return san;
  return san.replace(/[KQRBN]/g, (letter) => letters.charAt(ENGLISH.indexOf(letter)) || letter);
}

/** One move in long notation, as it is read back: `Rd1–h1`, `e5×d6`. */
export function longMove(move: Move, letters: PieceLetters): string {
  if (move.castle !== null) return move.castle === 'short' ? 'O-O' : 'O-O-O';
  const between = move.captured === null ? '–' : '×';
  const promotion = move.promotion === null ? '' : `=${letterOf(move.promotion, letters)}`;
  return `${letterOf(move.kind, letters)}${squareName(move.from)}${between}${squareName(move.to)}${promotion}`;
}

function letterOf(kind: Kind, letters: PieceLetters): string {
  return kind === 'p' ? '' : letters.charAt(ENGLISH.indexOf(kind.toUpperCase()));
}

/**
 * The move as the next word of the text, its number in front where print has one: always before
 * White's move, before Black's only where the text begins with it: `2. Qb1`, `Bd7`, `1... Nd8`.
 */
export function nextWord(line: AnswerLine, move: Move, letters: PieceLetters): string {
  const text = shortMove(lastPosition(line), move, letters);
  const isWhite = lastPosition(line).turn === 'w';
  const number = moveNumber(line.positions[0], line.moves.length);
  if (isWhite) return `${number}. ${text}`;
  return line.moves.length === 0 ? `${number}... ${text}` : text;
}

/** Number, from 1, of the move at an index of a line that begins in `start`. */
export function moveNumber(start: Position, index: number): number {
  return 1 + Math.floor((index + (start.turn === 'w' ? 0 : 1)) / 2);
}

/** The whole line as text: `1. Rh1 Bd7 2. Qb1`. */
export function lineText(line: AnswerLine, letters: PieceLetters): string {
  let built = startLine(line.positions[0]);
  const words: string[] = [];
  for (const move of line.moves) {
    words.push(nextWord(built, move, letters));
    built = extendLine(built, move);
  }
  return words.join(' ');
}
