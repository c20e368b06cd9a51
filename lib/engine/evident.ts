// Is a win plain to see after a solver's move? Rule O1, win tasks: nothing that remains needs finding.

import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Move, Uci } from '#lib/rules/move.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Kind, Position } from '#lib/rules/position.ts';
import { positionEnd } from '#lib/rules/position-end.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { type Engine, loadPosition } from './create-engine.ts';
import { exactResult, type Tables } from './inner/exact-result.ts';
import { providePawnEnding } from './inner/pawn-ending.ts';
import { MATE_FROM } from './inner/search-calls.ts';
import { searchPosition } from './search-position.ts';

/** A reply to look at: the move and the position it leads to, the solver to move. */
export interface EvidentReply {
  readonly move: Move;
  readonly after: Position;
}

/** What the question is about, and what it may cost. */
export interface EvidentOrder {
  readonly replies: readonly EvidentReply[];
  readonly winBound: number;
  readonly tables: Tables;
  /** Nodes of one search; at most two searches a reply. */
  readonly budgetNodes: number;
}

const RANK: Record<Kind, number> = { p: 1, n: 3, b: 3, r: 5, q: 9, k: 100 };

function isMate(position: Position, move: Move): boolean {
  return positionEnd(playMove(position, move)) === 'checkmate';
}

/** A move that anybody would look at first, whatever it is worth. */
function needsNoFinding(position: Position, move: Move, reply: Move): boolean {
  if (move.captured !== null) {
    if (reply.captured !== null && move.to === reply.to) return true;
    if (RANK[move.captured] > RANK[move.kind]) return true;
  }
  return isMate(position, move);
}

/** The best value within the budget, and the move that has it; null where there was no time for one ply. */
function best(engine: Engine, position: Position, order: EvidentOrder, without: readonly Uci[]) {
  const { shouldStop } = order.tables.work;
  const found = searchPosition(engine, { position, budgetNodes: order.budgetNodes, without, shouldStop });
  const last = found.depths.at(-1);
  return last === undefined ? null : { value: last.value, uci: last.line[0] ?? null };
}

/** Quiescent value from the side to move: stand-pat, captures and promotions at every ply, checks at the first two. */
export function quiescentValue(engine: Engine, position: Position): number {
  providePawnEnding(engine);
  loadPosition(engine, position);
  engine.calls.beginSearch();
  engine.calls.startNodes(1_000_000n);
  return engine.calls.quiescentValue();
}

function isEvidentAfter(engine: Engine, reply: EvidentReply, order: EvidentOrder): boolean {
  const { after } = reply;
  const exact = exactResult(after, order.tables);
  if (exact !== null) return exact.result === 'won';
  const moves = legalMoves(after);
  if (moves.some((move) => isMate(after, move))) return true;
  if (quiescentValue(engine, after) < order.winBound) return false;
  const first = best(engine, after, order, []);
  if (first === null || first.value < order.winBound) return false;
  if (moves.length === 1 || first.value >= MATE_FROM + 998) return true;
  const plain = moves.find((move) => writeUci(move) === first.uci);
  if (plain !== undefined && needsNoFinding(after, plain, reply.move)) return true;
  const second = best(engine, after, order, first.uci === null ? [] : [first.uci]);
  return second !== null && second.value >= order.winBound;
}

/**
 * Is the win evident after the move that led to `position` (the defender to move)? Checkmate and won
 * tables are; else after every adequate reply the next move must need no finding and the quiescent
 * value stay at or above the win bound. Exact for the given budget; costs up to 2 searches a reply.
 */
export function isEvident(engine: Engine, position: Position, order: EvidentOrder): boolean {
  const exact = exactResult(position, order.tables);
  if (exact !== null) return exact.result === 'lost';
  return order.replies.length > 0 && order.replies.every((reply) => isEvidentAfter(engine, reply, order));
}
