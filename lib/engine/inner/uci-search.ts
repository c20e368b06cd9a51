// One search of a UCI conversation: for `go mate` the exhaustive prover first, else and then the search,
// depth after depth, whose mates are proved before they are called mates. Both ask often whether to stop.

import type { Uci } from '#lib/rules/move.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import { type Engine, loadPosition } from '../create-engine.ts';
import { findMate } from '../find-mate.ts';
import { listLegal, uciOf } from '../kernel-moves.ts';
import { MOST_DEPTH, mateMoves } from '../search-position.ts';
import { solverValue } from './bounds.ts';
import { OUTPUT } from './kernel-calls.ts';
import { providePawnEnding } from './pawn-ending.ts';
import type { UciGo } from './uci-go.ts';
import { confirmMate, type MateKnowledge } from './uci-mates.ts';
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
  readonly known: MateKnowledge;
  /** Lines of the last completed depth, best first. */
  done: Line[];
  /** Nodes of the `go` in all, those since the kernel last began to count aside. */
  spent: number;
  /** Of these, what proving mates has cost. */
  proving: number;
  wasStopped: boolean;
}

const NODES_WITHOUT_MATE = 2_000_000;
/** What `go mate` spends where no number of nodes is said: some twenty seconds. */
const PROOF_NODES = 200_000_000;
/** Proving mates may cost as much as the search itself, or so much where that is more. */
const PROOF_LEAST = 20_000;
/** The prover counts a few nodes more on its way out of a search that has ended: never so many. */
const OVERRUN = 500;
/** The part of the nodes of a `go mate` that is left for a move to name where there is no such mate. */
const SHARE_WITHOUT_MATE = 8;
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
    known: { lengths: new Map(), refuted: new Map() },
    done: [],
    spent: 0,
    proving: 0,
    wasStopped: false,
  };
  const mate = named.length > 0 ? null : announceMate(search);
  if (mate !== null) return `bestmove ${mate}`;
  deepen(search);
  return bestMove(search);
}

/** Has the other side said stop? Once it has, it has. */
function patienceOf(search: Search): () => boolean {
  return () => {
    search.wasStopped = search.wasStopped || search.listener.shouldStop();
    return search.wasStopped;
  };
}

/** `go mate N`: the prover's move, or null where it finds none in its nodes, is stopped or was not asked. */
function announceMate(search: Search): Uci | null {
  const { engine, order, listener } = search;
  const { mate: bound, nodes } = order.go;
  if (bound === null) return null;
  const found = findMate(engine, {
    fen: writeFen(order.place.here),
    bound: Math.min(bound, MOST_MOVES),
    proofNodes: nodes === null ? PROOF_NODES : nodes - Math.ceil(nodes / SHARE_WITHOUT_MATE),
    shouldStop: patienceOf(search),
  });
  search.spent = found.nodes;
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

/** Nodes of the `go` in all. */
function nodeLimit({ nodes, mate }: UciGo, spent: number): number {
  return nodes ?? (mate === null ? NO_LIMIT : spent + NODES_WITHOUT_MATE);
}

function deepen(search: Search): void {
  const { engine, order } = search;
  const limit = nodeLimit(order.go, search.spent);
  const deepest = Math.min(order.go.isInfinite ? MOST_DEPTH : (order.go.depth ?? MOST_DEPTH), MOST_DEPTH);
  engine.calls.beginSearch();
  try {
    goOn(search, limit);
    for (let depth = 1; depth <= deepest && !search.wasStopped; depth += 1) {
      const lines = searchDepth(search, depth);
      if (lines === null) return;
      search.done = lines.sort((a, b) => b.value - a.value);
      tellLines(search, depth, limit);
      if (search.spent >= limit) return;
    }
  } finally {
    engine.onPoll = null;
  }
}

/** Puts the kernel before the next depth, with the nodes that are left. */
function goOn(search: Search, limit: number): void {
  const { engine, order } = search;
  setUp(engine, order.place);
  engine.calls.startNodes(BigInt(Math.max(1, limit - search.spent)));
  engine.onPoll = patienceOf(search);
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

/** Says the lines of a depth. Where one claims a mate the prover is asked first, on the same kernel. */
function tellLines(search: Search, depth: number, limit: number): void {
  const { engine, done, listener } = search;
  const isMateClaimed = done.some(({ value }) => mateMoves(value) !== null);
  const nodes = (): number => search.spent + (isMateClaimed ? 0 : Number(engine.calls.nodesSoFar()));
  if (isMateClaimed) search.spent += Number(engine.calls.nodesSoFar());
  const scores = done.map(({ value }, at) => scoreOf(search, { value, at, limit }));
  for (const [at, { pv }] of done.entries()) {
    const score = `${scores[at]} nodes ${nodes()} pv ${pv.join(' ')}`;
    listener.say(`info depth ${depth} multipv ${at + 1} score ${score}`);
  }
  if (isMateClaimed) goOn(search, limit);
}

/** `mate 3` where the prover confirms it within the nodes that are left for it, else `cp` with a large value. */
function scoreOf(
  search: Search,
  { value, at, limit }: { readonly value: number; readonly at: number; readonly limit: number },
): string {
  const { engine, order, wanted, done, known } = search;
  const moves = mateMoves(value);
  if (moves === null) return `cp ${value}`;
  const better = new Set(done.slice(0, at).map(({ pv }) => pv[0]));
  const among = [...wanted.keys()].filter((uci) => !better.has(uci));
  const claim = { here: order.place.here, moves, first: done[at]?.pv[0] ?? '', among };
  const allowed = Math.max(PROOF_LEAST, search.spent - search.proving) - search.proving;
  const nodes = Math.min(limit - search.spent - OVERRUN, allowed);
  const found = confirmMate(engine, claim, { known, nodes, shouldStop: patienceOf(search) });
  search.spent += found.nodes;
  search.proving += found.nodes;
  return found.moves === null ? `cp ${solverValue(-value)}` : `mate ${found.moves}`;
}

function bestMove({ done, wanted }: Search): string {
  const [move, reply] = done[0]?.pv ?? [];
  // Stopped before the first depth was complete: any move is better than none.
  if (move === undefined) return `bestmove ${[...wanted.keys()][0] ?? '0000'}`;
  return reply === undefined ? `bestmove ${move}` : `bestmove ${move} ponder ${reply}`;
}
