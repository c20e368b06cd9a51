import type { Result } from '#lib/kit/result.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { playUci } from '#lib/rules/uci.ts';

export const START_FEN = 'rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1';

/** The value of a result that the test takes for granted. */
export function accepted<T>(result: Result<T, unknown>): T {
  if (!result.ok) throw new Error(`Refused: ${JSON.stringify(result.reason)}`);
  return result.value;
}

/** The reason of a result that the test expects to be refused. */
export function refused<R>(result: Result<unknown, R>): R {
  if (result.ok) throw new Error(`Not refused: ${JSON.stringify(result.value)}`);
  return result.reason;
}

/** The position of a FEN. */
export function positionOf(fen: string): Position {
  return accepted(parseFen(fen));
}

/** The position after moves in UCI form. */
export function afterMoves(fen: string, moves: readonly string[]): Position {
  return moves.reduce((position, uci) => {
    const next = playUci(position, uci);
    if (next === null) throw new Error(`${uci} is not legal after ${fen}`);
    return next;
  }, positionOf(fen));
}
