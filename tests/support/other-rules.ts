import { Chess } from 'chess.js';

/** A move of the other rules library; squares count 0 (a8) to 119 (h1) with 16 a rank. */
interface OtherMove {
  readonly from: number;
  readonly to: number;
  readonly promotion?: string;
}

/** The other library's board at a FEN. */
export function otherBoard(fen: string): Chess {
  return new Chess(fen);
}

/** Its legal moves in UCI form, sorted. Its public list also writes notation, at a hundred times the cost. */
export function otherLegalMoves(board: Chess): string[] {
  // biome-ignore lint/complexity/useLiteralKeys: the types allow a private name only in this form
  const moves: readonly OtherMove[] = board['_moves']({ legal: true });
  return moves.map(({ from, to, promotion }) => name(from) + name(to) + (promotion ?? '')).sort();
}

function name(square: number): string {
  return String.fromCharCode(97 + (square & 15)) + String(8 - (square >> 4));
}
