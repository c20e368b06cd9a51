// How is a move printed? Short notation with the piece letters of the reader's language, or with figurines,
// numbered as the columns print it: "1 Rh1 Bd7 2 Qb1", "2 … Nxd6".

import type { Move, Uci } from '#lib/rules/move.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Kind, Position } from '#lib/rules/position.ts';
import { writeSan } from '#lib/rules/san.ts';
import { findUci } from '#lib/rules/uci.ts';
import type { Locale } from './locale.ts';
import { FIGURINES, pieceLettersOf } from './piece-letters.ts';

/** Whose letters: a language's, or the figures of the men. */
export type Letters = Locale | 'figurine';

const KIND_OF: Readonly<Record<string, Kind>> = { N: 'n', B: 'b', R: 'r', Q: 'q', K: 'k' };

/** `Nxd6+` in English, `Sxd6+` in German, `♘xd6+` with figurines; castling `O-O` for all. The move must be legal. */
export function sanFor(position: Position, move: Move, letters: Letters): string {
  const san = writeSan(position, move);
  if (move.castle !== null) return san;
  return san.replace(/[NBRQK]/g, (letter) => {
    const kind = KIND_OF[letter];
    return kind === undefined ? letter : letterOf(kind, letters);
  });
}

function letterOf(kind: Kind, letters: Letters): string {
  return letters === 'figurine' ? FIGURINES[kind][0] : (pieceLettersOf(letters).letters[kind][0] ?? '');
}

/** Where a printed line begins. */
export interface MovesPlace {
  readonly letters: Letters;
  /** Moves from the position of the FEN to the first one printed; they are counted and not printed. */
  readonly before?: readonly Uci[];
}

/**
 * A line of moves with the solver's moves numbered from 1, whoever is to move in the FEN: "1 Rh1 Bd7 2 Qb1",
 * for Black "1 … Qh4"; a line that begins with a reply "2 … Nxd6". Stops before a move that is not legal.
 */
export function movesText(fen: string, moves: readonly Uci[], { letters, before = [] }: MovesPlace): string {
  const start = parseFen(fen);
  if (!start.ok) throw new Error(`not a position: ${fen}`);
  const words: string[] = [];
  let position: Position = start.value;
  for (const [ply, uci] of [...before, ...moves].entries()) {
    const move = findUci(position, uci);
    if (move === null) break;
    if (ply >= before.length) {
      words.push(numberFor(start.value, ply, ply === before.length) + sanFor(position, move, letters));
    }
    position = playMove(position, move);
  }
  return words.join(' ');
}

// Black's first move of a puzzle stands as "1 … Qh4"; the reply to it, White's, is "2 Kxh4".
function numberFor(start: Position, ply: number, isFirst: boolean): string {
  const halfMoves = start.turn === 'w' ? ply : ply + 1;
  const number = (halfMoves >> 1) + 1;
  if (halfMoves % 2 === 0) return `${number} `;
  return isFirst ? `${number} … ` : '';
}
