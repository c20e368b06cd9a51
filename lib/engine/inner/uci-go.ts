// What does a `go` command ask for? Times become nodes: the engine keeps no clock (rule V0).

import { ok, type Result, refuse } from '#lib/kit/result.ts';
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

/** What was expected where the words could not be read. */
export interface GoReason {
  readonly code: 'go';
  readonly expected: string;
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
  'perft',
]);
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

/** Reads the words after `go`, for the side to move. */
export function parseGo(words: readonly string[], turn: Side): Result<UciGo, GoReason> {
  const numbers = new Map<string, number>();
  let isInfinite = false;
  let searchMoves: string[] = [];
  for (let at = 0; at < words.length; at += 1) {
    const word = words[at] ?? '';
    if (word === 'infinite') isInfinite = true;
    else if (word === 'searchmoves') {
      const rest = words.slice(at + 1);
      const end = rest.findIndex((one) => !MOVE.test(one));
      searchMoves = end < 0 ? rest : rest.slice(0, end);
      if (searchMoves.length === 0)
        return refuse({ code: 'go', expected: 'moves like e2e4 after searchmoves' });
      at += searchMoves.length;
    } else if (word !== 'ponder') {
      const number = Number(words[at + 1]);
      if (!NUMBERS.has(word) || word === 'perft') {
        return refuse({
          code: 'go',
          expected: 'go with nodes, depth, mate, movetime, clocks, searchmoves or infinite',
        });
      }
      if (!Number.isInteger(number) || number < (word.endsWith('time') ? -1e9 : 0) || number > 1e12) {
        return refuse({ code: 'go', expected: `a whole number after ${word}` });
      }
      numbers.set(word, number);
      at += 1;
    }
  }
  const depth = numbers.get('depth') ?? null;
  const mate = numbers.get('mate') ?? null;
  const asked = numbers.get('nodes') ?? clockNodes(numbers, turn);
  const isOpen = isInfinite || depth !== null;
  const nodes = asked ?? (isOpen ? null : mate === null ? DEFAULT_NODES : null);
  return ok({ nodes, depth, mate, isInfinite, searchMoves });
}
