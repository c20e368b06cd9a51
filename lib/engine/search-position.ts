// How does a position stand? Iterative deepening on the kernel, by nodes and depths, never by time (rule V0).

import type { Uci } from '#lib/rules/move.ts';
import type { Position } from '#lib/rules/position.ts';
import { type Engine, loadPosition } from './create-engine.ts';
import { OUTPUT } from './inner/kernel-calls.ts';
import { providePawnEnding } from './inner/pawn-ending.ts';
import { MATE_FROM, MATE_VALUE } from './inner/search-calls.ts';
import { listLegal, uciOf } from './kernel-moves.ts';

/** No search goes deeper, in plies. */
export const MOST_DEPTH = 80;

/** One completed depth. */
export interface DepthResult {
  readonly depth: number;
  /** Centipawns from the side to move; from 29,000 on a mate, 30,000 less the plies to it; not proved. */
  readonly value: number;
  readonly line: readonly Uci[];
  /** All nodes of the search so far. */
  readonly nodes: number;
}

/** What a search has found when it ends; no depth where the budget was too small even for one ply. */
export interface SearchResult {
  readonly depths: readonly DepthResult[];
  readonly nodes: number;
  readonly wasStopped: boolean;
}

/** What to search and how far. */
export interface SearchOrder {
  readonly position: Position;
  readonly budgetNodes: number;
  readonly maxDepth?: number;
  /** Root moves to leave out, for second-best lines. */
  readonly without?: readonly Uci[];
  /** Asked after every completed depth: is that enough? */
  readonly isEnough?: (depths: readonly DepthResult[]) => boolean;
  /** Asked when the budget is spent: more nodes to go on with, or 0. */
  readonly moreNodes?: (depths: readonly DepthResult[]) => number;
  readonly shouldStop?: (() => boolean) | undefined;
  readonly onNodes?: ((nodes: number) => void) | undefined;
}

/** Moves to mate for a mate value: 1 for mate in one, negative where the side to move is mated; null for other values. */
export function mateMoves(value: number): number | null {
  if (value >= MATE_FROM) return (MATE_VALUE - value + 1) >> 1;
  return value <= -MATE_FROM ? -((MATE_VALUE + value) >> 1) : null;
}

/** The line of the depth just completed. */
function readLine(engine: Engine): Uci[] {
  const length = engine.calls.searchLine();
  const bytes = engine.bytes();
  const line: Uci[] = [];
  for (let n = 0; n < length; n += 1) {
    const uci = uciOf(bytes.getUint32(OUTPUT + n * 4, true));
    if (uci !== null) line.push(uci);
  }
  return line;
}

/** Searches on the loaded position with the tables as they are; one depth after the other. */
export function deepen(engine: Engine, order: Omit<SearchOrder, 'position' | 'without'>): SearchResult {
  const { calls } = engine;
  const depths: DepthResult[] = [];
  const maxDepth = Math.min(order.maxDepth ?? MOST_DEPTH, MOST_DEPTH);
  let spent = 0;
  let wasStopped = false;
  engine.onPoll = (nodes) => {
    order.onNodes?.(spent + nodes);
    return order.shouldStop?.() ?? false;
  };
  try {
    let left = order.budgetNodes;
    while (left > 0 && !wasStopped && depths.length < maxDepth) {
      calls.startNodes(BigInt(Math.round(left)));
      while (depths.length < maxDepth && calls.searchDepth(depths.length + 1) === 1) {
        const nodes = spent + Number(calls.nodesSoFar());
        depths.push({ depth: depths.length + 1, value: calls.searchValue(), line: readLine(engine), nodes });
        if (order.isEnough?.(depths) === true) return { depths, nodes, wasStopped };
      }
      spent += Number(calls.nodesSoFar());
      wasStopped = calls.stopReason() === 2;
      left = wasStopped ? 0 : (order.moreNodes?.(depths) ?? 0);
    }
  } finally {
    engine.onPoll = null;
  }
  return { depths, nodes: spent, wasStopped };
}

/** Searches a position with fresh tables. About a million nodes a second. */
export function searchPosition(engine: Engine, order: SearchOrder): SearchResult {
  providePawnEnding(engine);
  loadPosition(engine, order.position);
  engine.calls.beginSearch();
  const without = new Set(order.without ?? []);
  if (without.size > 0) {
    for (const { move, uci } of listLegal(engine)) if (without.has(uci)) engine.calls.leaveOut(move);
  }
  return deepen(engine, order);
}
