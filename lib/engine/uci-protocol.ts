// Our engine behind the UCI protocol (April 2006): lines of text in, lines of text out. Streams and threads
// are the command line's business. Every `go` is answered by exactly one `bestmove`; `isready`, `stop` and
// `quit` are heard while a search runs, all else waits behind it in its order.

import type { Engine } from './create-engine.ts';
import { ENGINE_VERSION } from './engine-version.ts';
import { parseGo } from './inner/uci-go.ts';
import { parseUciPosition, startPosition, type UciPosition } from './inner/uci-position.ts';
import { runUciSearch } from './inner/uci-search.ts';

/** The other side of a conversation. */
export interface UciDoor {
  /** Takes a line that the engine says. */
  say(line: string): void;
  /** Called often while a search runs: hands what came meanwhile to `handle` or `end`. */
  listen(): void;
}

/** One conversation. */
export interface UciSession {
  /** Takes a line. What needs a search is done by the next `work`. */
  handle(line: string): void;
  /** No line will come any more: what waits is done, and a search without end is stopped. */
  end(): void;
  /** Does what waits; comes back where only a new line can bring more to do. */
  work(): void;
  /** Is a `go` not yet answered? */
  isSearching(): boolean;
  /** Was `quit` said, or did the lines end and all is done? */
  isOver(): boolean;
}

const MOST_LINES = 20;
/** A longer line is no command of the protocol that we could answer: a game of 2,000 moves fits. */
const MOST_CHARACTERS = 20_000;
/** So many commands may wait behind a search. */
const MOST_WAITING = 1000;
const COMMANDS = 'uci isready ucinewgame setoption position go stop quit debug register ponderhit'.split(' ');

interface State {
  readonly engine: Engine;
  readonly door: UciDoor;
  readonly waiting: string[][];
  /** Null after a position that could not be read: then no move is better than one of another position. */
  place: UciPosition | null;
  lines: number;
  isThinking: boolean;
  /** The answer to `go infinite` whose search has ended by itself: it may be given only after `stop`. */
  heldBack: string | null;
  wantsStop: boolean;
  hasEnded: boolean;
  hasQuit: boolean;
}

/** Begins a conversation on an engine that nobody else uses meanwhile. */
export function createUciSession(engine: Engine, door: UciDoor): UciSession {
  const state: State = {
    engine,
    door,
    waiting: [],
    place: startPosition(),
    lines: 1,
    isThinking: false,
    heldBack: null,
    wantsStop: false,
    hasEnded: false,
    hasQuit: false,
  };
  const isSearching = () => state.isThinking || state.heldBack !== null;
  return {
    handle: (line) => handle(state, line),
    end() {
      state.hasEnded = true;
      answerHeldBack(state);
    },
    work: () => work(state),
    isSearching,
    isOver: () => state.hasQuit || (state.hasEnded && !isSearching() && state.waiting.length === 0),
  };
}

function work(state: State): void {
  while (!state.hasQuit && state.heldBack === null) {
    const words = state.waiting.shift();
    if (words === undefined) return;
    obey(state, words);
  }
}

function handle(state: State, line: string): void {
  if (line.length > MOST_CHARACTERS) {
    complain(state, `a line of at most ${MOST_CHARACTERS} characters`, line);
    return;
  }
  const words = line.trim().split(/\s+/);
  // Unknown words before a command are passed over, as the protocol wants it.
  const at = words.findIndex((word) => COMMANDS.includes(word));
  if (at < 0) {
    if (words[0] !== '') {
      complain(state, 'uci, isready, ucinewgame, setoption, position, go, stop or quit', line);
    }
    return;
  }
  hear(state, words.slice(at));
}

function hear(state: State, words: string[]): void {
  switch (words[0]) {
    case 'uci':
      greet(state);
      break;
    case 'isready':
      state.door.say('readyok');
      break;
    case 'stop':
      stop(state, words);
      break;
    case 'quit':
      state.hasQuit = true;
      answerHeldBack(state);
      break;
    default:
      if (state.waiting.length < MOST_WAITING) state.waiting.push(words);
      else complain(state, `at most ${MOST_WAITING} commands behind a search`, words.join(' '));
  }
}

function obey(state: State, words: readonly string[]): void {
  switch (words[0]) {
    case 'ucinewgame':
      state.place = startPosition();
      break;
    case 'setoption':
      setOption(state, words.join(' '));
      break;
    case 'position':
      setPosition(state, words.slice(1));
      break;
    case 'go':
      go(state, words.slice(1));
      break;
    default:
    // debug, register, ponderhit, and a stop behind which nothing searches: nothing to do.
  }
}

function greet({ door }: State): void {
  door.say(`id name Tailpiece ${ENGINE_VERSION}`);
  door.say('id author the authors of Tailpiece');
  door.say(`option name MultiPV type spin default 1 min 1 max ${MOST_LINES}`);
  door.say('uciok');
}

function complain({ door }: State, expected: string, found: string): void {
  // What a stranger wrote is cut short, and cannot begin a line of its own.
  const quoted = found.trim().slice(0, 80).replace(/\p{C}/gu, ' ');
  door.say(`info string expected ${expected}, not "${quoted}"`);
}

function answerHeldBack(state: State): void {
  if (state.heldBack !== null) state.door.say(state.heldBack);
  state.heldBack = null;
}

// A `go` that still waits was said before this `stop` and is ended by it too.
function stop(state: State, words: string[]): void {
  if (state.waiting.some(([command]) => command === 'go')) state.waiting.push(words);
  if (state.isThinking) state.wantsStop = true;
  answerHeldBack(state);
}

function setPosition(state: State, words: readonly string[]): void {
  const place = parseUciPosition(words);
  state.place = place.ok ? place.value : null;
  if (!place.ok) complain(state, place.reason.expected, place.reason.found);
}

function setOption(state: State, line: string): void {
  const match = /^setoption name (.+?)(?: value (.*?))?$/i.exec(line);
  const lines = Number(match?.[2]);
  if (match?.[1]?.toLowerCase() !== 'multipv') complain(state, 'setoption name MultiPV value N', line);
  else if (Number.isInteger(lines) && lines >= 1 && lines <= MOST_LINES) state.lines = lines;
  else complain(state, `a number of lines from 1 to ${MOST_LINES}`, line);
}

function go(state: State, words: readonly string[]): void {
  const { engine, door, place, lines } = state;
  if (place === null) {
    complain(state, 'a position that can be played before go', words.join(' '));
    door.say('bestmove 0000');
    return;
  }
  const read = parseGo(words, place.here.turn);
  for (const expected of read.complaints) complain(state, expected, words.join(' '));
  state.isThinking = true;
  state.wantsStop = state.waiting.some(([command]) => command === 'stop');
  const shouldStop = (): boolean => {
    door.listen();
    return state.wantsStop || state.hasQuit || (state.hasEnded && read.go.isInfinite);
  };
  const best = runUciSearch(engine, { place, lines, go: read.go }, { say: door.say, shouldStop });
  state.isThinking = false;
  const mayAnswer = !read.go.isInfinite || state.wantsStop || state.hasQuit || state.hasEnded;
  if (mayAnswer) door.say(best);
  else state.heldBack = best;
}
