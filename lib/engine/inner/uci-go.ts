// What does a `go` command ask for? Times become nodes: the engine keeps no clock (rule V0).

import type { Uci } from '#lib/rules/move.ts';
import type { Side } from '#lib/rules/position.ts';

/** A parsed `go`; null where not limited. */
export interface UciGo {
  readonly nodes: number | null;
  readonly depth: number | null;
  readonly mate: number | null;
  readonly isInfinite: boolean;
  /** Only these root moves; empty for all. */
  readonly searchMoves: readonly Uci[];
}

/** A `go` and what was expected where some of its words could not be read. */
export interface ReadGo {
  readonly go: UciGo;
  readonly complaints: readonly string[];
}

/** A millisecond of a clock counts as so many nodes. */
const NODES_A_MS = 1000;
/** Of a clock for the whole game, one move gets this part. */
const MOVES_TO_GO = 40;
/** Where nothing is said, so many nodes. */
const DEFAULT_NODES = 1_000_000;

const NUMBERS = new Set([
  'nodes',
  'depth',
  'mate',
  'movetime',
  'wtime',
  'btime',
  'winc',
  'binc',
  'movestogo',
]);
const KNOWN = 'go with nodes, depth, mate, movetime, clocks, searchmoves or infinite';
const MOVE = /^[a-h][1-8][a-h][1-8][qrbn]?$/;

function clockNodes(numbers: ReadonlyMap<string, number>, turn: Side): number | null {
  const moveTime = numbers.get('movetime');
  if (moveTime !== undefined) return Math.max(1, moveTime) * NODES_A_MS;
  const time = numbers.get(turn === 'w' ? 'wtime' : 'btime');
  if (time === undefined) return null;
  const increment = numbers.get(turn === 'w' ? 'winc' : 'binc') ?? 0;
  const share = time / Math.max(1, numbers.get('movestogo') ?? MOVES_TO_GO) + increment / 2;
  return Math.max(1000, Math.round(share * NODES_A_MS));
}

/**
 * Reads the words after `go`, for the side to move. Who said `go` waits for a best move, so a word that
 * cannot be read is passed over, as the protocol wants it, and told of.
 */
export function parseGo(words: readonly string[], turn: Side): ReadGo {
  const numbers = new Map<string, number>();
  const complaints: string[] = [];
  let isInfinite = false;
  let searchMoves: string[] = [];
  for (let at = 0; at < words.length; at += 1) {
    const word = words[at] ?? '';
    if (word === 'infinite') isInfinite = true;
    else if (word === 'searchmoves') {
      searchMoves = movesAt(words, at + 1);
      if (searchMoves.length === 0) complaints.push('moves like e2e4 after searchmoves');
      at += searchMoves.length;
    } else if (NUMBERS.has(word)) {
      const number = Number(words[at + 1]);
      const least = word.endsWith('time') ? -1e9 : 0;
      if (Number.isInteger(number) && number >= least && number <= 1e12) numbers.set(word, number);
      else complaints.push(`a whole number after ${word}`);
      // The next word is this one's, unless it has a sense of its own.
      if (!NUMBERS.has(words[at + 1] ?? '') && words[at + 1] !== 'infinite') at += 1;
    } else if (word !== 'ponder') complaints.push(KNOWN);
  }
  return { go: { ...limits(numbers, isInfinite, turn), isInfinite, searchMoves }, complaints };
}

function movesAt(words: readonly string[], from: number): string[] {
  const rest = words.slice(from);
  const end = rest.findIndex((one) => !MOVE.test(one));
  return end < 0 ? rest : rest.slice(0, end);
}

function limits(
  numbers: ReadonlyMap<string, number>,
  isInfinite: boolean,
  turn: Side,
): Pick<UciGo, 'nodes' | 'depth' | 'mate'> {
  const depth = numbers.get('depth') ?? null;
  const mate = numbers.get('mate') ?? null;
  const asked = numbers.get('nodes') ?? clockNodes(numbers, turn);
  const isOpen = isInfinite || depth !== null || mate !== null;
  return { nodes: asked ?? (isOpen ? null : DEFAULT_NODES), depth, mate };
}
