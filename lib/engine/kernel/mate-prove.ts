// The mate prover's calls for the rest of the engine: a question is one position; it may be asked
// move by move and depth by depth, and remembers what it has found until the next `beginMateQuestion`.

import { MOVES } from './layout';
import { make, unmake } from './make';
import { isMated } from './mate-one';
import { freshOrder } from './mate-order';
import { defend, lastReply, solve } from './mate-search';
import { freshMateTable } from './mate-table';
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

/** Has the side to move a forced mate in at most `moves`? */
export function hasMate(moves: u32): u32 {
  if (solve(moves, MOVES, 0)) return YES;
  return isStopped() ? STOPPED : NO;
}
