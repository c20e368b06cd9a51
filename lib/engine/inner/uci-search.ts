// One running search of a UCI conversation, done in slices of nodes so that "stop" is heard.

import type { Uci } from '#lib/rules/move.ts';
import type { Position } from '#lib/rules/position.ts';
import { type Engine, loadPosition } from '../create-engine.ts';
import { listLegal, uciOf } from '../kernel-moves.ts';
import { MOST_DEPTH, mateMoves } from '../search-position.ts';
import { OUTPUT } from './kernel-calls.ts';
import { providePawnEnding } from './pawn-ending.ts';
import type { UciGo } from './uci-go.ts';

/** The search at hand. */
export interface UciSearch {
  slice(): { lines: string[]; isDone: boolean };
  stop(): string[];
}

/** Where and what to search. */
export interface UciOrder {
  readonly start: Position;
  /** Moves from there; repetitions among them count. */
  readonly moves: readonly Uci[];
  readonly here: Position;
  readonly lines: number;
  readonly go: UciGo;
}

interface Line {
  value: number;
  pv: Uci[];
}

interface Progress {
  readonly engine: Engine;
  readonly order: UciOrder;
  readonly kernelMoves: ReadonlyMap<Uci, number>;
  readonly isLeftOut: (uci: Uci) => boolean;
  /** Lines of the last completed depth, best first, and those of the depth at hand. */
  done: Line[];
  open: Line[];
  depth: number;
  nodes: number;
}

const LEAST_SLICE = 250_000;
/** A slice is at most this part of the nodes spent: a depth that does not fit into one must come to its end. */
const SLICE_SHARE = 6;
const NODES_WITHOUT_MATE = 2_000_000;

/** Puts the start position on the board and plays the moves, so that the kernel knows what stood before. */
function setUp(engine: Engine, order: UciOrder): void {
  providePawnEnding(engine);
  loadPosition(engine, order.start);
  for (const uci of order.moves) {
    const move = listLegal(engine).find((one) => one.uci === uci)?.move;
    if (move === undefined) throw new Error(`${uci} was legal when it was read`);
    engine.calls.make(move);
  }
}

/** Begins a search; nothing is searched before the first slice. */
export function createUciSearch(engine: Engine, order: UciOrder): UciSearch {
  setUp(engine, order);
  const kernelMoves = new Map(listLegal(engine).map(({ move, uci }) => [uci, move]));
  const wanted = new Set(order.go.searchMoves.filter((uci) => kernelMoves.has(uci)));
  const progress: Progress = {
    engine,
    order,
    kernelMoves,
    isLeftOut: (uci) => wanted.size > 0 && !wanted.has(uci),
    done: [],
    open: [],
    depth: 1,
    nodes: 0,
  };
  engine.calls.beginSearch();
  return { slice: () => slice(progress), stop: () => [bestMove(progress)] };
}

function nodeLimit({ order }: Progress): number {
  const { nodes, mate } = order.go;
  return nodes ?? (mate === null ? Number.POSITIVE_INFINITY : NODES_WITHOUT_MATE);
}

function wantedLines({ order, kernelMoves, isLeftOut }: Progress): number {
  const candidates = [...kernelMoves.keys()].filter((uci) => !isLeftOut(uci)).length;
  return Math.min(order.lines, candidates);
}

function isFinished(progress: Progress): boolean {
  const { go } = progress.order;
  if (progress.kernelMoves.size === 0) return true;
  if (go.isInfinite) return progress.depth > MOST_DEPTH;
  return (
    progress.nodes >= nodeLimit(progress) || progress.depth > Math.min(go.depth ?? MOST_DEPTH, MOST_DEPTH)
  );
}

function slice(progress: Progress): { lines: string[]; isDone: boolean } {
  const { calls } = progress.engine;
  const lines: string[] = [];
  const room = Math.max(LEAST_SLICE, progress.nodes / SLICE_SHARE);
  const limit = Math.min(room, nodeLimit(progress) - progress.nodes);
  if (limit > 0 && progress.kernelMoves.size > 0) {
    calls.startNodes(BigInt(Math.max(1, Math.round(limit))));
    while (!isFinished(progress) && searchLine(progress)) {
      if (progress.open.length < wantedLines(progress)) continue;
      progress.done = progress.open;
      progress.open = [];
      lines.push(...infoLines(progress));
      progress.depth += 1;
    }
    progress.nodes += Number(calls.nodesSoFar());
  }
  // After "infinite" only "stop" may bring the best move, even if there is nothing more to search.
  const isDone = isFinished(progress) && !progress.order.go.isInfinite;
  return { lines: isDone ? [...lines, bestMove(progress)] : lines, isDone };
}

/** The next line of the depth at hand; false where the nodes of the slice ran out. */
function searchLine(progress: Progress): boolean {
  const { engine, open, depth } = progress;
  const { calls } = engine;
  calls.leaveNoneOut();
  for (const [uci, move] of progress.kernelMoves) {
    if (progress.isLeftOut(uci) || open.some(({ pv }) => pv[0] === uci)) calls.leaveOut(move);
  }
  calls.aimAt(progress.done[open.length]?.value ?? open.at(-1)?.value ?? 0);
  if (calls.searchDepth(depth) !== 1) return false;
  const length = calls.searchLine();
  const bytes = engine.bytes();
  const pv = Array.from({ length }, (_, n) => uciOf(bytes.getUint32(OUTPUT + 4 * n, true)));
  open.push({ value: calls.searchValue(), pv: pv.filter((uci) => uci !== null) });
  return true;
}

function infoLines({ engine, done, depth, nodes }: Progress): string[] {
  const total = nodes + Number(engine.calls.nodesSoFar());
  return [...done]
    .sort((a, b) => b.value - a.value)
    .map(({ value, pv }, i) => {
      const mate = mateMoves(value);
      const score = mate === null ? `cp ${value}` : `mate ${mate}`;
      return `info depth ${depth} multipv ${i + 1} score ${score} nodes ${total} pv ${pv.join(' ')}`;
    });
}

function bestMove(progress: Progress): string {
  const [best] = [...progress.done].sort((a, b) => b.value - a.value);
  // Stopped before the first depth was complete: any move is better than none.
  const [fallback] = [...progress.kernelMoves.keys()].filter((uci) => !progress.isLeftOut(uci)).sort();
  const [move, reply] = best?.pv ?? [];
  if (move === undefined) return `bestmove ${fallback ?? '(none)'}`;
  return reply === undefined ? `bestmove ${move}` : `bestmove ${move} ponder ${reply}`;
}
