// Can mate be forced in so many moves? Exact (rule V1): every legal move and reply is looked at
// unless the table already knows the answer for the very position. Positions with a half-move
// clock of 100 are drawn (rule V5); repetition cannot shorten a mate and is no part of it.

import { markChecks } from './checks';
import { countMoves, generate } from './generate';
import { DOUBLE_PUSH, GIVES_CHECK, META, MOVE_MASK, SPECIAL } from './layout';
import { make, unmake } from './make';
import { isPlayable } from './mate-legal';
import { findMateInOne, flightsNow, isMated, mayMate } from './mate-one';
import { answerTo, killer, noteRefutation, noteSuccess, pickNext, scoreReplies, scoreSolverMoves } from './mate-order';
import { disprovedIn, keyAfter, mateKey, moveIn, provedIn, recallMate, storeMate, UNKNOWN } from './mate-table';
import { countNode, isStopped, nodesSoFar } from './poll';
import { inCheck } from './position';

// So many solver moves (4 bytes each) are picked by their score; sorting the rest costs more than it finds.
const SORTED_MOVES: usize = 4 * 6;

// @ts-ignore: decorator
@inline
function isDrawnByClock(): bool {
  return load<u32>(META) >> 16 >= 100;
}

// @ts-ignore: decorator
@inline
function effortSince(before: u64): u32 {
  return 64 - <u32>clz(nodesSoFar() - before);
}

/** Has the solver, to move, a forced mate in at most `moves`? Says false, too, when the search was stopped. */
export function solve(moves: u32, ptr: usize, ply: u32): bool {
  if (isDrawnByClock()) return false;
  if (moves == 1) return findMateInOne(ptr) != 0;
  const key = mateKey();
  let entry = recallMate(key);
  if (provedIn(entry) <= moves) return true;
  if (disprovedIn(entry) >= moves) return false;
  const before = nodesSoFar();
  // The shorter question first: it finds the shortest mate, and costs a fraction of the longer one.
  if (moves > 2 && disprovedIn(entry) < moves - 1) {
    if (solve(moves - 1, ptr, ply)) return true;
    if (isStopped()) return false;
    entry = recallMate(key);
  }
  const end = generate(ptr);
  markChecks(ptr, end);
  if (moves == 2) {
    const mate = mateAtOnce(ptr, end);
    if (mate) {
      storeMate(key, 1, 0, mate, 1);
      return true;
    }
  }
  scoreSolverMoves(ptr, end, moveIn(entry));
  if (moves > 2) preferForcingChecks(ptr, end);
  const sorted = ptr + SORTED_MOVES;
  for (let at = ptr; at < end; at += 4) {
    const move = (at < sorted ? pickNext(at, end) : load<u32>(at)) & MOVE_MASK;
    make(move);
    countNode();
    const isMate = defend(moves - 1, move, end, ply + 1);
    unmake(move);
    if (isStopped()) return false;
    if (isMate) {
      noteSuccess(move, moves);
      storeMate(key, moves, 0, move, effortSince(before));
      return true;
    }
  }
  storeMate(key, UNKNOWN, moves, 0, effortSince(before));
  return false;
}

// Checks that leave few replies go first: their trees are small.
function preferForcingChecks(ptr: usize, end: usize): void {
  for (let at = ptr; at < end; at += 4) {
    const marked = load<u32>(at);
    if (!(marked & GIVES_CHECK)) continue;
    make(marked & MOVE_MASK);
    const replies = min<u32>(countMoves(), 31);
    unmake(marked & MOVE_MASK);
    store<u32>(at, marked + (((31 - replies) << 5) << 18));
  }
}

function mateAtOnce(ptr: usize, end: usize): u32 {
  const flights = flightsNow();
  for (let at = ptr; at < end; at += 4) {
    const move = load<u32>(at);
    if (!(move & GIVES_CHECK) || !mayMate(move, flights)) continue;
    make(move);
    countNode();
    const isMate = isMated();
    unmake(move);
    if (isMate) return move & MOVE_MASK;
  }
  return 0;
}

/**
 * After the solver's move `played` (on the board): does every reply allow mate in at most `moves`
 * more? Where not, the refuting reply is in the table for `moves` >= 2 and in `lastReply`.
 */
export function defend(moves: u32, played: u32, ptr: usize, ply: u32): bool {
  lastReply = 0;
  if (isDrawnByClock()) return inCheck() && generate(ptr) == ptr;
  if (moves == 1) return defendLast(played, ptr, ply);
  const key = mateKey();
  const entry = recallMate(key);
  if (provedIn(entry) <= moves) return true;
  const known = moveIn(entry);
  if (disprovedIn(entry) >= moves) {
    lastReply = known;
    return false;
  }
  const before = nodesSoFar();
  const end = generate(ptr);
  if (end == ptr) return inCheck();
  const elsewhere = knownRefutation(ptr, end, moves);
  if (elsewhere) {
    storeMate(key, UNKNOWN, moves, elsewhere, 1);
    lastReply = elsewhere;
    return false;
  }
  markChecks(ptr, end);
  scoreReplies(ptr, end, known, played, ply);
  for (let at = ptr; at < end; at += 4) {
    const reply = pickNext(at, end) & MOVE_MASK;
    make(reply);
    countNode();
    const isMate = solve(moves, end, ply + 1);
    unmake(reply);
    if (isStopped()) return false;
    if (!isMate) {
      noteRefutation(ply, played, reply, moves);
      storeMate(key, UNKNOWN, moves, reply, effortSince(before));
      lastReply = reply;
      return false;
    }
  }
  storeMate(key, moves, 0, 0, effortSince(before));
  return true;
}

// A reply to a position of which the table already knows that no mate follows, or 0.
function knownRefutation(ptr: usize, end: usize, moves: u32): u32 {
  for (let at = ptr; at < end; at += 4) {
    const reply = load<u32>(at);
    const key = keyAfter(reply);
    if (key && disprovedIn(recallMate(key)) >= moves) return reply;
  }
  return 0;
}

// With one move left for the solver. What refuted the move elsewhere, or a sibling, refutes most of
// the time: it is tried before the replies are listed.
function defendLast(played: u32, ptr: usize, ply: u32): bool {
  const answer = answerTo(played);
  if (answer && refutesLast(answer, ptr)) return noteLast(ply, played, answer);
  const first = killer(ply, 0);
  if (first && first != answer && refutesLast(first, ptr)) return noteLast(ply, played, first);
  const second = killer(ply, 4);
  if (second && second != answer && refutesLast(second, ptr)) return noteLast(ply, played, second);
  if (isStopped()) return false;
  const end = generate(ptr);
  if (end == ptr) return inCheck();
  scoreReplies(ptr, end, 0, played, ply);
  for (let at = ptr; at < end; at += 4) {
    const reply = pickNext(at, end) & MOVE_MASK;
    if (reply == answer || reply == first || reply == second) {
      if (!(reply & SPECIAL) || (reply & SPECIAL) == DOUBLE_PUSH) continue;
    }
    make(reply);
    countNode();
    const isMate = !isDrawnByClock() && findMateInOne(end) != 0;
    unmake(reply);
    if (isStopped()) return false;
    if (!isMate) return noteLast(ply, played, reply);
  }
  return true;
}

function refutesLast(reply: u32, ptr: usize): bool {
  if (!isPlayable(reply)) return false;
  make(reply);
  countNode();
  const isMate = !isDrawnByClock() && findMateInOne(ptr) != 0;
  unmake(reply);
  return !isMate && !isStopped();
}

function noteLast(ply: u32, played: u32, reply: u32): bool {
  noteRefutation(ply, played, reply, 1);
  lastReply = reply;
  return false;
}

/** The reply that refuted in the last call of `defend`; 0 for none (stalemate, or the fifty-move rule). */
export let lastReply: u32 = 0;

/** Before a question that may be answered without `defend`. */
export function forgetReply(): void {
  lastReply = 0;
}
