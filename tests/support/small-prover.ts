// A second opinion on mates: the plainest exhaustive search over `rules`, sharing nothing with the engine.

import type { Proof, ProofNode } from '#lib/checker/proof.ts';
import { isCheck } from '#lib/rules/attacks.ts';
import { legalMoves } from '#lib/rules/legal-moves.ts';
import type { Move, Uci } from '#lib/rules/move.ts';
import { playMove } from '#lib/rules/play-move.ts';
import type { Position } from '#lib/rules/position.ts';
import { positionKey } from '#lib/rules/position-key.ts';
import { writeUci } from '#lib/rules/uci.ts';

/** What is known of a position with the solver to move: mate in at most `yes` moves, none in `no`. */
interface Known {
  yes: number;
  no: number;
}

/** Memory of one question; positions by their key. */
export type SmallMemory = Map<string, Known>;

/** True if the side to move forces mate in at most `moves` of its moves. Exact; exponential in `moves`. */
export function canMate(position: Position, moves: number, memory: SmallMemory = new Map()): boolean {
  if (moves <= 0) return false;
  const key = positionKey(position);
  const known = memory.get(key) ?? { yes: Number.POSITIVE_INFINITY, no: 0 };
  if (known.yes <= moves) return true;
  if (known.no >= moves) return false;
  // Checks first: most mates begin with one, and a last move must be one.
  const after = legalMoves(position).map((move) => playMove(position, move));
  const checks = after.filter(isCheck);
  const rest = moves === 1 ? [] : after.filter((next) => !isCheck(next));
  const isMate = [...checks, ...rest].some((next) => isMated(next, moves - 1, memory));
  if (isMate) known.yes = Math.min(known.yes, moves);
  else known.no = Math.max(known.no, moves);
  memory.set(key, known);
  return isMate;
}

/** True if the side to move is checkmated, or is mated in at most `moves` whatever it plays. */
export function isMated(position: Position, moves: number, memory: SmallMemory = new Map()): boolean {
  const replies = legalMoves(position);
  if (replies.length === 0) return isCheck(position);
  return moves > 0 && replies.every((reply) => canMate(playMove(position, reply), moves, memory));
}

/** The exact number of moves to mate after each first move, up to `moves`; null where no mate follows. */
export function mateAfterEach(position: Position, moves: number): Map<Uci, number | null> {
  const memory: SmallMemory = new Map();
  const found = new Map<Uci, number | null>();
  for (const move of legalMoves(position)) {
    const next = playMove(position, move);
    let length: number | null = null;
    for (let tried = 1; tried <= moves && length === null; tried += 1) {
      if (isMated(next, tried - 1, memory)) length = tried;
    }
    found.set(writeUci(move), length);
  }
  return found;
}

/** A proof graph of the shortest mate, or null where none follows in `moves`; positions are shared. */
export function smallProof(position: Position, fen: string, moves: number): Proof | null {
  const memory: SmallMemory = new Map();
  if (!canMate(position, moves, memory)) return null;
  const indexes = new Map<string, number>();
  const nodes: ProofNode[] = [];
  const add = (at: Position): number => {
    const key = positionKey(at);
    const known = indexes.get(key);
    if (known !== undefined) return known;
    const index = nodes.length;
    indexes.set(key, index);
    nodes.push({ move: '', replies: {} });
    const move = shortest(at, moves, memory);
    const next = playMove(at, move);
    const replies: Record<string, number> = {};
    for (const reply of legalMoves(next)) replies[writeUci(reply)] = add(playMove(next, reply));
    nodes[index] = { move: writeUci(move), replies };
    return index;
  };
  add(position);
  return { v: 1, fen, n: moves, nodes };
}

function shortest(position: Position, moves: number, memory: SmallMemory): Move {
  for (let tried = 1; tried <= moves; tried += 1) {
    const move = legalMoves(position).find((one) => isMated(playMove(position, one), tried - 1, memory));
    if (move !== undefined) return move;
  }
  throw new Error('No mate here');
}
