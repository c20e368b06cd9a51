// One search of a UCI conversation: for `go mate` the exhaustive prover first, else and then the search,
// depth after depth. Both ask often whether to stop.

import type { Uci } from '#lib/rules/move.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { type Engine, loadPosition } from '../create-engine.ts';
import { findMate } from '../find-mate.ts';
import { listLegal, uciOf } from '../kernel-moves.ts';
import { MOST_DEPTH, mateMoves } from '../search-position.ts';
import { OUTPUT } from './kernel-calls.ts';
import { providePawnEnding } from './pawn-ending.ts';
import type { UciGo } from './uci-go.ts';
import type { UciPosition } from './uci-position.ts';

/** Where and what to search. */
export interface UciOrder {
  readonly place: UciPosition;
  /** How many first moves to tell of. */
  readonly lines: number;
  readonly go: UciGo;
}

/** Whom the search tells its lines, and whom it asks, every 32,768 nodes, whether to stop. */
export interface UciListener {
  say(line: string): void;
  shouldStop(): boolean;
}

interface Line {
  readonly value: number;
  readonly pv: readonly Uci[];
}

interface Search {
  readonly engine: Engine;
  readonly order: UciOrder;
  readonly listener: UciListener;
  /** First moves to choose from, as the kernel writes them. */
  readonly wanted: ReadonlyMap<Uci, number>;
  readonly leftOut: readonly number[];
  /** Lines of the last completed depth, best first. */
  done: Line[];
}

const NODES_WITHOUT_MATE = 2_000_000;
/** What `go mate` spends where no number of nodes is said: some twenty seconds. */
const PROOF_NODES = 200_000_000;
/** No mate is looked for that takes longer. */
const MOST_MOVES = 100;
const NO_LIMIT = Number.MAX_SAFE_INTEGER;

/** Searches to the end, or until told to stop; the `bestmove` line comes out, and is left to the caller to say. */
export function runUciSearch(engine: Engine, order: UciOrder, listener: UciListener): string {
  loadPosition(engine, order.place.here);
  const legal = listLegal(engine);
  if (legal.length === 0) {
    listener.say(`info depth 0 score ${engine.calls.inCheck() === 1 ? 'mate 0' : 'cp 0'}`);
    return 'bestmove 0000';
  }
  const named = legal.filter(({ uci }) => order.go.searchMoves.includes(uci));
  const chosen = named.length > 0 ? named : legal;
  const search: Search = {
    engine,
    order,
    listener,
    wanted: new Map(chosen.map(({ uci, move }) => [uci, move])),
    leftOut: legal.filter((one) => !chosen.includes(one)).map(({ move }) => move),
    done: [],
  };
  const mate = named.length > 0 ? null : announceMate(search);
  if (mate !== null) return `bestmove ${mate}`;
  deepen(search);
  return bestMove(search);
}

/** `go mate N`: the prover's move, or null where it finds none in its nodes, is stopped or was not asked. */
function announceMate({ engine, order, listener }: Search): Uci | null {
  const { mate: bound, nodes } = order.go;
  if (bound === null) return null;
  const found = findMate(engine, {
    fen: writeFen(order.place.here),
    bound: Math.min(bound, MOST_MOVES),
    proofNodes: nodes ?? PROOF_NODES,
    shouldStop: listener.shouldStop,
  });
  if (found.mateIn === null || found.move === null) return null;
  listener.say(
    `info depth ${2 * found.mateIn - 1} score mate ${found.mateIn} nodes ${found.nodes} pv ${found.move}`,
  );
  return found.move;
}

/** Puts the start on the board and plays the moves, so that the kernel knows what stood before. */
function setUp(engine: Engine, { start, moves }: UciPosition): void {
  providePawnEnding(engine);
  loadPosition(engine, start);
  for (const uci of moves) {
    const move = listLegal(engine).find((one) => one.uci === uci)?.move;
    if (move === undefined) throw new Error(`${uci} was legal when it was read`);
    engine.calls.make(move);
  }
}

function nodeLimit({ nodes, mate }: UciGo): number {
  return nodes ?? (mate === null ? NO_LIMIT : NODES_WITHOUT_MATE);
}

function deepen(search: Search): void {
  const { engine, order, listener } = search;
  setUp(engine, order.place);
  engine.calls.beginSearch();
  engine.calls.startNodes(BigInt(Math.max(1, nodeLimit(order.go))));
  engine.onPoll = listener.shouldStop;
  const deepest = Math.min(order.go.isInfinite ? MOST_DEPTH : (order.go.depth ?? MOST_DEPTH), MOST_DEPTH);
  try {
    for (let depth = 1; depth <= deepest; depth += 1) {
      const lines = searchDepth(search, depth);
      if (lines === null) return;
      search.done = lines.sort((a, b) => b.value - a.value);
      for (const line of infoLines(search, depth)) listener.say(line);
    }
  } finally {
    engine.onPoll = null;
  }
}

/** As many lines of one depth as are wanted, or null where nodes or patience ran out. */
function searchDepth({ engine, order, wanted, leftOut, done }: Search, depth: number): Line[] | null {
  const { calls } = engine;
  const lines: Line[] = [];
  const count = Math.min(order.lines, wanted.size);
  while (lines.length < count) {
    calls.leaveNoneOut();
    for (const move of leftOut) calls.leaveOut(move);
    for (const { pv } of lines) calls.leaveOut(wanted.get(pv[0] ?? '') ?? 0);
    calls.aimAt(done[lines.length]?.value ?? lines.at(-1)?.value ?? 0);
    if (calls.searchDepth(depth) !== 1) return null;
    lines.push({ value: calls.searchValue(), pv: readLine(engine) });
  }
  return lines;
}

function readLine(engine: Engine): Uci[] {
  const length = engine.calls.searchLine();
  const bytes = engine.bytes();
  const line = Array.from({ length }, (_, n) => uciOf(bytes.getUint32(OUTPUT + 4 * n, true)));
  return line.filter((uci) => uci !== null);
}

function infoLines({ engine, done }: Search, depth: number): string[] {
  const nodes = engine.calls.nodesSoFar();
  return done.map(({ value, pv }, at) => {
    const mate = mateMoves(value);
    const score = mate === null ? `cp ${value}` : `mate ${mate}`;
    return `info depth ${depth} multipv ${at + 1} score ${score} nodes ${nodes} pv ${pv.join(' ')}`;
  });
}

function bestMove({ done, wanted }: Search): string {
  const [move, reply] = done[0]?.pv ?? [];
  // Stopped before the first depth was complete: any move is better than none.
  if (move === undefined) return `bestmove ${[...wanted.keys()][0] ?? '0000'}`;
  return reply === undefined ? `bestmove ${move}` : `bestmove ${move} ponder ${reply}`;
}
