// The mate prover's calls for the rest of the engine: a question is one position; it may be asked
// move by move and depth by depth, and remembers what it has found until the next `beginMateQuestion`.

import { MOVES } from './layout';
import { make, unmake } from './make';
import { findMateInOne, isMated } from './mate-one';
import { freshOrder } from './mate-order';
import { defend, forgetReply, lastReply, solve } from './mate-search';
import { freshMateTable, mateKey, moveIn, recallMate } from './mate-table';
import { countNode, isStopped } from './poll';
import { inCheck } from './position';

export const NO: u32 = 0;
export const YES: u32 = 1;
export const STOPPED: u32 = 2;

/** Forgets everything, so that the answer depends on nothing asked before. */
export function beginMateQuestion(): void {
  freshMateTable();
  freshOrder();
}

/** Does `move` in the loaded position force mate in at most `moves`, itself included? The refuting reply is `refutingReply()`. */
export function movesMate(move: u32, moves: u32): u32 {
  forgetReply();
  make(move);
  countNode();
  let isMate = inCheck() && isMated();
  if (!isMate) isMate = moves > 1 && defend(moves - 1, move, MOVES, 1);
  unmake(move);
  return isMate ? YES : isStopped() ? STOPPED : NO;
}

/** The reply that refuted the move asked about last with more than one move left; 0 where the move itself draws. */
export function refutingReply(): u32 {
  return lastReply;
}

let bestMove: u32 = 0;

/**
 * The shortest forced mate of the side to move, in moves; 0 where there is none in at most `bound`,
 * 255 where the search was stopped. Its first move is `mateMove()`.
 */
export function shortestMate(bound: u32): u32 {
  bestMove = 0;
  for (let moves: u32 = 1; moves <= bound; moves++) {
    if (moves == 1) bestMove = findMateInOne(MOVES);
    else if (solve(moves, MOVES, 0)) bestMove = moveIn(recallMate(mateKey()));
    if (isStopped()) return 255;
    if (bestMove) return moves;
  }
  return 0;
}

/** The first move of the mate found by `shortestMate`. */
export function mateMove(): u32 {
  return bestMove;
}

/** The key that tells positions of a mate question apart: as `readKey`, with a half-move clock of 80 or more. */
export function questionKey(): u64 {
  return mateKey();
}
