// What is known exactly of a position, without any search: mates, terminal draws, endings with a table
// (rules V3, V4, V5).

import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Uci } from '#lib/rules/move.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { positionEnd } from '#lib/rules/position-end.ts';
import { writeUci } from '#lib/rules/uci.ts';
import type { TableSet, TableWork } from '../table-set.ts';

/** A result from the side to move. `distance`: moves of the winner to mate, null where drawn. */
export interface ExactResult {
  readonly result: 'won' | 'drawn' | 'lost';
  readonly distance: number | null;
  /** The table that says so; null for a position that is over. */
  readonly material: string | null;
}

/** Exact tables, and how long to wait for one that has to be built. */
export interface Tables {
  readonly set: TableSet;
  readonly work: TableWork;
}

/** From this clock on the fifty-move rule may come before the mate that a table promises (rule V5). */
const CLOCK_COUNTS_FROM = 80;

/** Plies a table line is played out. */
const LINE_PLIES = 16;

/** The exact result, or null where only a search can tell (or the building of a table was stopped). */
export function exactResult(position: Position, { set, work }: Tables): ExactResult | null {
  const end = positionEnd(position);
  if (end === 'checkmate') return { result: 'lost', distance: 0, material: null };
  if (end !== null) return { result: 'drawn', distance: null, material: null };
  if (position.halfmoveClock >= 100) return { result: 'drawn', distance: null, material: null };
  if (!set.covers(position)) return null;
  const found = set.probe(position, work);
  if (found === null) return null;
  const plies = position.halfmoveClock + 2 * (found.distance ?? 0);
  if (found.result !== 'drawn' && position.halfmoveClock >= CLOCK_COUNTS_FROM && plies > 100) return null;
  return found;
}

function isBetter(one: ExactResult, other: ExactResult): boolean {
  // From the side that has just moved: the opponent lost soonest, else drawn, else won latest.
  const order = { lost: 0, drawn: 1, won: 2 };
  if (one.result !== other.result) return order[one.result] < order[other.result];
  const [a, b] = [one.distance ?? 0, other.distance ?? 0];
  return one.result === 'lost' ? a < b : a > b;
}

/** UCI order, but a queen before the other men that a pawn can become. */
function isBefore(one: Uci, other: Uci): boolean {
  return one.replace('q', '') < other.replace('q', '');
}

/** One way to play a table ending out, at most 16 plies, the first best move in UCI order, queens first. */
export function tableLine(position: Position, tables: Tables): Uci[] {
  const line: Uci[] = [];
  let here = position;
  while (line.length < LINE_PLIES) {
    let best: { uci: Uci; next: Position; result: ExactResult } | null = null;
    for (const move of legalMoves(here)) {
      const next = playMove(here, move);
      const result = exactResult(next, tables);
      if (result === null) return line;
      const uci = writeUci(move);
      const isTied = best !== null && !isBetter(result, best.result) && !isBetter(best.result, result);
      if (best === null || isBetter(result, best.result) || (isTied && isBefore(uci, best.uci)))
        best = { uci, next, result };
    }
    if (best === null) return line;
    line.push(best.uci);
    here = best.next;
  }
  return line;
}
