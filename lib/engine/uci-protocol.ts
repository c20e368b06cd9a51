// Our engine behind the UCI protocol: a line of text in, lines of text out. Who reads and writes the
// streams is the command line's business; so is calling `work` until a search is over, which lets
// "stop" and "isready" in between two slices of nodes.

import type { Uci } from '#lib/rules/move.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Position } from '#lib/rules/position.ts';
import { positionEnd } from '#lib/rules/position-end.ts';
import { playUci } from '#lib/rules/uci.ts';
import { writeFen } from '#lib/rules/write-fen.ts';
import type { Engine } from './create-engine.ts';
import { ENGINE_VERSION } from './engine-version.ts';
import { findMate } from './find-mate.ts';
import { parseGo, type UciGo } from './inner/uci-go.ts';
import { createUciSearch, type UciSearch } from './inner/uci-search.ts';

/** One conversation. */
export interface UciSession {
  /** Takes one line; what is to be said at once comes back, a line each. */
  handle(line: string): string[];
  /** One slice of the running search (about a quarter second); lines to say, `bestmove` when it is over. */
  work(): string[];
  /** Is a search running, so that `work` has something to do? */
  isSearching(): boolean;
  /** Was `quit` said? */
  isOver(): boolean;
}

const START = 'rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1';
const MOST_LINES = 20;
/** A longer line is no command of the protocol that we could answer: a game of 2,000 moves fits. */
const MOST_CHARACTERS = 20_000;

interface State {
  readonly engine: Engine;
  start: Position;
  moves: Uci[];
  here: Position;
  lines: number;
  search: UciSearch | null;
  isOver: boolean;
}

/** Begins a conversation on an engine that nobody else uses meanwhile. */
export function createUciSession(engine: Engine): UciSession {
  const start = startPosition();
  const state: State = { engine, start, moves: [], here: start, lines: 1, search: null, isOver: false };
  return {
    handle: (line) => handle(state, line),
    work: () => work(state),
    isSearching: () => state.search !== null,
    isOver: () => state.isOver,
  };
}

function startPosition(): Position {
  const parsed = parseFen(START);
  if (!parsed.ok) throw new Error('the first position of a game');
  return parsed.value;
}

function work(state: State): string[] {
  if (state.search === null) return [];
  const { lines, isDone } = state.search.slice();
  if (isDone) state.search = null;
  return lines;
}

function handle(state: State, line: string): string[] {
  if (line.length > MOST_CHARACTERS)
    return [complaint(`a line of at most ${MOST_CHARACTERS} characters`, line)];
  const words = line.trim().split(/\s+/);
  switch (words[0]) {
    case '':
    case 'debug':
    case 'ponderhit':
    case 'register':
      return [];
    case 'uci':
      return greeting();
    case 'isready':
      return ['readyok'];
    case 'ucinewgame':
      return isBusy(state) ?? setUp(state, startPosition(), []);
    case 'setoption':
      return isBusy(state) ?? setOption(state, line);
    case 'position':
      return isBusy(state) ?? readPosition(state, words.slice(1));
    case 'go':
      return isBusy(state) ?? go(state, words.slice(1));
    case 'stop':
      return stop(state);
    case 'quit':
      state.isOver = true;
      return stop(state);
    default:
      return [complaint('uci, isready, ucinewgame, setoption, position, go, stop or quit', line)];
  }
}

function greeting(): string[] {
  return [
    `id name Tailpiece ${ENGINE_VERSION}`,
    'id author the authors of Tailpiece',
    `option name MultiPV type spin default 1 min 1 max ${MOST_LINES}`,
    'uciok',
  ];
}

function complaint(expected: string, found: string): string {
  return `info string expected ${expected}, not "${found.trim().slice(0, 80)}"`;
}

function isBusy(state: State): string[] | null {
  return state.search === null ? null : ['info string a search is running: say stop first'];
}

function stop(state: State): string[] {
  const lines = state.search?.stop() ?? [];
  state.search = null;
  return lines;
}

function setUp(state: State, start: Position, moves: readonly Uci[]): string[] {
  state.start = start;
  state.here = start;
  state.moves = [];
  for (const uci of moves) {
    const next = playUci(state.here, uci);
    if (next === null) return [complaint(`a legal move in ${writeFen(state.here)}`, uci)];
    state.moves.push(uci);
    state.here = next;
  }
  return [];
}

function setOption(state: State, line: string): string[] {
  const match = /^\s*setoption\s+name\s+(.+?)(?:\s+value\s+(.*?))?\s*$/i.exec(line);
  if (match?.[1]?.toLowerCase() !== 'multipv') return [complaint('setoption name MultiPV value N', line)];
  const lines = Number(match[2]);
  if (!Number.isInteger(lines) || lines < 1 || lines > MOST_LINES) {
    return [complaint(`a number of lines from 1 to ${MOST_LINES}`, line)];
  }
  state.lines = lines;
  return [];
}

function readPosition(state: State, words: readonly string[]): string[] {
  const at = words.indexOf('moves');
  const place = at < 0 ? words : words.slice(0, at);
  const moves = at < 0 ? [] : words.slice(at + 1);
  if (place[0] === 'startpos' && place.length === 1) return setUp(state, startPosition(), moves);
  if (place[0] !== 'fen') return [complaint('position startpos or position fen FEN', words.join(' '))];
  const fen = place.slice(1).join(' ');
  const parsed = parseFen(fen);
  if (!parsed.ok) return [complaint(`a position that can be played (${parsed.reason.code})`, fen)];
  return setUp(state, parsed.value, moves);
}

function go(state: State, words: readonly string[]): string[] {
  const order = parseGo(words, state.here.turn);
  if (!order.ok) return [complaint(order.reason.expected, words.join(' '))];
  const end = positionEnd(state.here);
  if (end === 'checkmate') return ['info depth 0 score mate 0', 'bestmove (none)'];
  if (end === 'stalemate') return ['info depth 0 score cp 0', 'bestmove (none)'];
  if (order.value.mate !== null) {
    const found = announceMate(state, order.value, order.value.mate);
    if (found !== null) return found;
  }
  state.search = createUciSearch(state.engine, {
    start: state.start,
    moves: state.moves,
    here: state.here,
    lines: state.lines,
    go: order.value,
  });
  return [];
}

/** `go mate N`: the exhaustive prover; null where it finds none in its nodes, and a search answers. */
function announceMate(state: State, { nodes }: UciGo, bound: number): string[] | null {
  const fen = writeFen(state.here);
  const found = findMate(state.engine, { fen, bound, proofNodes: nodes ?? 20_000_000 });
  if (found.mateIn === null || found.move === null) return null;
  return [
    `info depth ${2 * found.mateIn - 1} score mate ${found.mateIn} nodes ${found.nodes} pv ${found.move}`,
    `bestmove ${found.move}`,
  ];
}
