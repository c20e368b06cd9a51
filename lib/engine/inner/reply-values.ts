// What are the replies to a holding move worth, all at the same depth and budget, and which of them
// are adequate (rule O2, win and draw tasks)?

import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Move, Uci } from '#lib/rules/move.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { writeUci } from '#lib/rules/uci.ts';
import { type Engine, loadPosition } from '../create-engine.ts';
import { listLegal } from '../kernel-moves.ts';
import type { ReplyValue } from '../verdict.ts';
import { exactResult, type Tables } from './exact-result.ts';
import { providePawnEnding } from './pawn-ending.ts';
import { MATE_FROM } from './search-calls.ts';

/** Values are clipped here; mates and table wins are worth as much (rule O2). */
const MOST_VALUE = 1000;
/** A reply at most so much worse than the best is adequate. */
const WORSE_BY = 100;
const MOST_ADEQUATE = 6;
const MOST_DEPTH = 40;

/** A reply with the position it leads to and its value from the solver's side. */
export interface JudgedReply extends ReplyValue {
  readonly uci: Uci;
  readonly value: number;
  readonly move: Move;
  readonly after: Position;
}

interface OpenReply {
  readonly uci: Uci;
  readonly move: Move;
  readonly after: Position;
  readonly isExact: boolean;
  value: number;
  raw: number;
}

const EXACT_VALUE = { won: MOST_VALUE, drawn: 0, lost: -MOST_VALUE };

function clip(value: number): number {
  if (Math.abs(value) >= MATE_FROM) return value > 0 ? MOST_VALUE : -MOST_VALUE;
  return Math.max(-MOST_VALUE, Math.min(MOST_VALUE, value));
}

function openReplies(position: Position, tables: Tables): OpenReply[] {
  return legalMoves(position)
    .map((move): OpenReply => {
      const after = playMove(position, move);
      const exact = exactResult(after, tables);
      const value = exact === null ? 0 : EXACT_VALUE[exact.result];
      return { uci: writeUci(move), move, after, isExact: exact !== null, value, raw: 0 };
    })
    .sort((a, b) => (a.uci < b.uci ? -1 : 1));
}

/** One depth for all replies, or false where the nodes did not last: then nothing of it is kept. */
function deepenAll(engine: Engine, open: readonly OpenReply[], depth: number): boolean {
  const values: number[] = [];
  for (const reply of open) {
    loadPosition(engine, reply.after);
    engine.calls.aimAt(reply.raw);
    if (engine.calls.searchDepth(depth) !== 1) return false;
    values.push(engine.calls.searchValue());
  }
  open.forEach((reply, i) => {
    reply.raw = values[i] ?? 0;
    reply.value = clip(reply.raw);
  });
  return true;
}

/**
 * Every legal reply in `position` (the defender to move) with its value from the solver's side, the
 * defender's best first. All share one budget and one table and end at the same depth.
 */
export function valueReplies(
  engine: Engine,
  position: Position,
  { tables, budgetNodes }: { readonly tables: Tables; readonly budgetNodes: number },
): { replies: JudgedReply[]; nodes: number } {
  const replies = openReplies(position, tables);
  const open = replies.filter(({ isExact }) => !isExact);
  let nodes = 0;
  if (open.length > 0) {
    providePawnEnding(engine);
    loadPosition(engine, position);
    engine.calls.beginSearch();
    engine.calls.startNodes(BigInt(Math.max(1000, Math.round(budgetNodes))));
    engine.onPoll = () => tables.work.shouldStop?.() ?? false;
    try {
      for (let depth = 1; depth <= MOST_DEPTH; depth += 1) if (!deepenAll(engine, open, depth)) break;
      nodes = Number(engine.calls.nodesSoFar());
    } finally {
      engine.onPoll = null;
    }
  }
  const judged = replies.map(({ uci, move, after, value }) => ({ uci, move, after, value, mateIn: null }));
  return { replies: judged.sort((a, b) => a.value - b.value || (a.uci < b.uci ? -1 : 1)), nodes };
}

/** Replies that take the man just moved, or one that the exchange shows was left hanging. */
function takesOffered(
  engine: Engine,
  position: Position,
  solverMove: Move,
  replies: readonly JudgedReply[],
): Set<Uci> {
  loadPosition(engine, position);
  const kernelMoves = new Map(listLegal(engine).map(({ move, uci }) => [uci, move]));
  const offered = new Set<Uci>();
  for (const { uci, move } of replies) {
    if (move.captured === null) continue;
    const isMovedMan = move.isEnPassant || move.to === solverMove.to;
    const kernelMove = kernelMoves.get(uci);
    if (isMovedMan || (kernelMove !== undefined && engine.calls.exchangeBrings(kernelMove, 1) === 1))
      offered.add(uci);
  }
  return offered;
}

/** The adequate replies of rule O2, at most six: those that take what was offered or left, then the best. */
export function adequateReplies(
  engine: Engine,
  position: Position,
  { solverMove, replies }: { readonly solverMove: Move; readonly replies: readonly JudgedReply[] },
): JudgedReply[] {
  const offered = takesOffered(engine, position, solverMove, replies);
  const best = replies[0]?.value ?? 0;
  const near = replies.filter(({ uci, value }) => !offered.has(uci) && value <= best + WORSE_BY);
  return [...replies.filter(({ uci }) => offered.has(uci)), ...near].slice(0, MOST_ADEQUATE);
}
