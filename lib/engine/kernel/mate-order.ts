// In which order are moves tried in a mate question? Whatever the order, the answer is the same;
// a good one finds it sooner.

import { GIVES_CHECK, MOVE_MASK, PROVER } from './layout';
import { manOn } from './position';

/** Two replies a ply that refuted a sibling, u32 each. */
const KILLERS: usize = PROVER + 0x100;
/** The reply that last refuted a man's move to a square, u32: 16 men x 64 squares. */
const ANSWERS: usize = PROVER + 0x1000;
/** How often a man's move to a square refuted, u32: 16 x 64. */
const REFUTES: usize = PROVER + 0x2000;
/** How often a solver's quiet move to a square mated, u32: 16 x 64. */
const SUCCEEDS: usize = PROVER + 0x3000;

export function freshOrder(): void {
  memory.fill(PROVER + 0x100, 0, 0x4000 - 0x100);
}

// @ts-ignore: decorator
@inline
function slot(man: u32, to: u32): usize {
  return (<usize>((man << 6) | to)) << 2;
}

/** The killers of a ply: which = 0 or 4. */
// @ts-ignore: decorator
@inline
export function killer(ply: u32, which: usize): u32 {
  return load<u32>(KILLERS + ((<usize>ply) << 3) + which);
}

// The key of a move already on the board: the man that stands on its target.
// @ts-ignore: decorator
@inline
function playedSlot(move: u32): usize {
  const to = (move >> 6) & 63;
  return slot(manOn(to), to);
}

/** The reply that refuted this solver move (already on the board) elsewhere, or 0. */
// @ts-ignore: decorator
@inline
export function answerTo(played: u32): u32 {
  return load<u32>(ANSWERS + playedSlot(played));
}

/** `reply`, not yet made, refutes `played`, the move on the board. */
export function noteRefutation(ply: u32, played: u32, reply: u32, depth: u32): void {
  reply &= MOVE_MASK;
  const at = KILLERS + ((<usize>ply) << 3);
  const first = load<u32>(at);
  if (first != reply) {
    store<u32>(at, first, 4);
    store<u32>(at, reply);
  }
  store<u32>(ANSWERS + playedSlot(played), reply);
  const from = reply & 63;
  const how = REFUTES + slot(manOn(from), (reply >> 6) & 63);
  store<u32>(how, min<u32>(load<u32>(how) + depth, 0xfffff));
}

/** A solver's move, not on the board, mates. */
export function noteSuccess(move: u32, depth: u32): void {
  const how = SUCCEEDS + slot(manOn(move & 63), (move >> 6) & 63);
  store<u32>(how, min<u32>(load<u32>(how) + depth, 0xfffff));
}

// 0 to 15: the order of magnitude.
// @ts-ignore: decorator
@inline
function size(count: u32): u32 {
  return (32 - clz(count)) >> 1;
}

/** Puts a score above each solver move: the known one, then checks, then what has mated elsewhere. */
export function scoreSolverMoves(start: usize, end: usize, known: u32): void {
  for (let at = start; at < end; at += 4) {
    const move = load<u32>(at);
    const bare = move & MOVE_MASK;
    let score: u32 = size(load<u32>(SUCCEEDS + slot(manOn(move & 63), (move >> 6) & 63)));
    if (bare == known) score = 4000;
    else if (move & GIVES_CHECK) score += 2000;
    store<u32>(at, move | (score << 18));
  }
}

// Above everything else: after a check the solver has few moves, all of which have to be refuted in
// turn. It cut the nodes of mates in 5 by half and of longer ones to a third.
const CHECK_FIRST: u32 = 8100;

/** Puts a score above each reply: checks if marked, known refutation, answer, killers, captures, what refuted elsewhere. */
export function scoreReplies(start: usize, end: usize, known: u32, played: u32, ply: u32): void {
  const answer = answerTo(played);
  const first = killer(ply, 0);
  const second = killer(ply, 4);
  const target = (played >> 6) & 63;
  for (let at = start; at < end; at += 4) {
    const marked = load<u32>(at);
    const move = marked & MOVE_MASK;
    const to = (move >> 6) & 63;
    let score: u32;
    if (move == known) score = 8000;
    else if (move == answer) score = 7000;
    else if (move == first) score = 6000;
    else if (move == second) score = 5000;
    else {
      score = size(load<u32>(REFUTES + slot(manOn(move & 63), to))) << 4;
      if (to == target) score += 40;
      else if (manOn(to)) score += 20;
    }
    if (marked & GIVES_CHECK) score += CHECK_FIRST;
    store<u32>(at, marked | (score << 18));
  }
}

/** Brings the move with the highest score to `at` and returns it without score. */
// @ts-ignore: decorator
@inline
export function pickNext(at: usize, end: usize): u32 {
  let best = load<u32>(at);
  let where = at;
  for (let other = at + 4; other < end; other += 4) {
    const move = load<u32>(other);
    if (move > best) {
      best = move;
      where = other;
    }
  }
  if (where != at) {
    store<u32>(where, load<u32>(at));
    store<u32>(at, best);
  }
  return best & (MOVE_MASK | GIVES_CHECK);
}
