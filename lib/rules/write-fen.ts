// How a position is written in FEN.

import { CASTLINGS } from './castling.ts';
import { type Position, squareName } from './position.ts';

const LETTERS = '.PNBRQK..pnbrqk';

/** All six fields. The en passant square is written after every double step, as the PGN standard (16.1.3.4) has it. */
export function writeFen(position: Position): string {
  const enPassant = position.enPassant < 0 ? '-' : squareName(position.enPassant);
  return `${writeBoardFields(position)} ${enPassant} ${position.halfmoveClock} ${position.fullmoveNumber}`;
}

/** The first three fields: men, side to move, castling rights. */
export function writeBoardFields({ board, turn, castling }: Position): string {
  let men = '';
  for (let rank = 7; rank >= 0; rank -= 1) {
    let gap = 0;
    for (let square = rank * 8; square < rank * 8 + 8; square += 1) {
      const man = board[square] ?? 0;
      if (man === 0) {
        gap += 1;
        continue;
      }
      if (gap > 0) men += gap;
      gap = 0;
      men += LETTERS.charAt(man);
    }
    if (gap > 0) men += gap;
    if (rank > 0) men += '/';
  }
  let rights = '';
  for (const { right, letter } of CASTLINGS) if ((castling & right) !== 0) rights += letter;
  return `${men} ${turn} ${rights === '' ? '-' : rights}`;
}
