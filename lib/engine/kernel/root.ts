// A search from the outside: begin, one depth at a time, read value and line. The caller decides when
// to stop; the kernel keeps no clock.

import { generate } from './generate';
import { ageHash, AT_LEAST, AT_MOST, clearHash, EXACT, recall, foundMove, remember } from './hash';
import { initSquareValues } from './eval-squares';
import { evaluate } from './evaluate';
import { MOVES, OUTPUT } from './layout';
import { make, unmake } from './make';
import { clearOrder, notePly, pickBest, rankMoves } from './order';
import { isStopped } from './poll';
import { inCheck, positionKey } from './position';
import { quiesce } from './quiesce';
import { initReductions, keepLine, search } from './search';
import { seeAtLeast } from './see';
import { EVAL_CACHE, INFINITE, KPK, LEFT_OUT, LINE_LENGTHS, LINES, MATE, MATE_BOUND, PAWN_CACHE, PLY_VALUES } from './search-layout';

let isReady: bool = false;
let leftOut: i32 = 0;
let lastValue: i32 = 0;

/** Where the bits of king and pawn against king are to be written. */
export function pawnEndingBits(): usize {
  return KPK;
}

/** Begins a search of the loaded position: every table fresh. */
export function beginSearch(): void {
  if (!isReady) {
    initSquareValues();
    initReductions();
    isReady = true;
  }
  clearHash();
  clearOrder();
  memory.fill(PAWN_CACHE, 0, 0x10000);
  memory.fill(EVAL_CACHE, 0, 0x20000);
  leftOut = 0;
  lastValue = 0;
}

/** Leaves a root move out of the search, for second-best lines. */
export function leaveOut(move: u32): void {
  store<u32>(LEFT_OUT + ((<usize>leftOut) << 2), move);
  leftOut++;
}

/** All root moves count again. */
export function leaveNoneOut(): void {
  leftOut = 0;
}

function isLeftOut(move: u32): bool {
  for (let i = 0; i < leftOut; i++) if (load<u32>(LEFT_OUT + ((<usize>i) << 2)) == move) return true;
  return false;
}

function rootMoves(): usize {
  const end = generate(MOVES);
  let kept: usize = MOVES;
  for (let at: usize = MOVES; at < end; at += 4) {
    const move = load<u32>(at);
    if (isLeftOut(move)) continue;
    store<u32>(kept, move);
    kept += 4;
  }
  return kept;
}

function searchRoot(alpha: i32, beta: i32, depth: i32): i32 {
  const end = rootMoves();
  store<u32>(LINE_LENGTHS, 0);
  if (end == MOVES) return inCheck() ? -MATE : 0;
  const key = positionKey();
  const remembered = recall(key, 0) ? foundMove : 0;
  rankMoves(MOVES, end, remembered, 0);
  const fixed = inCheck() ? -MATE : evaluate();
  store<i32>(PLY_VALUES, fixed);
  const next = end + (end - MOVES);
  const floor = alpha;
  let best = -INFINITE;
  let chosen: u32 = 0;
  let number = 0;
  for (let at: usize = MOVES; at < end; at += 4) {
    pickBest(MOVES, at, end);
    const move = load<u32>(at);
    number++;
    notePly(0, move);
    make(move);
    let value: i32;
    if (number == 1) value = -search(-beta, -alpha, depth - 1, 1, false, next);
    else {
      const less = depth >= 4 && number > 6 && !inCheck() ? 1 : 0;
      value = -search(-alpha - 1, -alpha, depth - 1 - less, 1, false, next);
      if (value > alpha && less > 0) value = -search(-alpha - 1, -alpha, depth - 1, 1, false, next);
      if (value > alpha && value < beta) value = -search(-beta, -alpha, depth - 1, 1, false, next);
    }
    unmake(move);
    if (isStopped()) return 0;
    if (value <= best) continue;
    best = value;
    if (value <= alpha) continue;
    alpha = value;
    chosen = move;
    keepLine(0, move);
    if (alpha >= beta) break;
  }
  if (leftOut == 0) {
    remember(key, chosen, best >= beta ? AT_LEAST : best > floor ? EXACT : AT_MOST, depth, best, inCheck() ? 0 : fixed, 0);
  }
  return best;
}

/** Searches to one depth, with a window around the last value that widens; false where it was stopped. */
export function searchDepth(depth: i32): bool {
  ageHash();
  let width = depth < 4 ? INFINITE : 30;
  let alpha = max(lastValue - width, -INFINITE);
  let beta = min(lastValue + width, INFINITE);
  for (;;) {
    const value = searchRoot(alpha, beta, depth);
    if (isStopped()) return false;
    if (value > alpha && value < beta) {
      lastValue = value;
      return true;
    }
    if (value == -MATE || (value == 0 && rootMoves() == MOVES)) {
      lastValue = value;
      return true;
    }
    width *= 3;
    if (width > 1500) width = INFINITE;
    if (value <= alpha) alpha = max(value - width, -INFINITE);
    else beta = min(value + width, INFINITE);
  }
  return false;
}

/** Sets the value around which the next depth looks first: for searches of several positions in turn. */
export function aimAt(value: i32): void {
  lastValue = abs(value) >= MATE_BOUND ? value : (value * 5) / 7;
}

/** Does the exchange that a legal move begins bring its side at least so many centipawns? */
export function exchangeBrings(move: u32, centipawns: i32): bool {
  return seeAtLeast(move, centipawns);
}

/**
 * The evaluation counts in hundredths of a pawn of its own; outside, 100 is the advantage with which
 * a game between equals is won about every second time, as is usual today. Found by comparing with
 * published values of won positions. Mates stay as they are.
 */
function shown(value: i32): i32 {
  return abs(value) >= MATE_BOUND ? value : (value * 7) / 5;
}

/** The value of the last completed depth, from the side to move. */
export function searchValue(): i32 {
  return shown(lastValue);
}

/** Writes the principal line of the last completed depth to OUTPUT; returns its length. */
export function searchLine(): i32 {
  const length = min(load<u32>(LINE_LENGTHS), 64);
  memory.copy(OUTPUT, LINES, (<usize>length) << 2);
  return <i32>length;
}

/** The quiescent value of the loaded position, from the side to move (rule O1: stand-pat, captures and promotions at every ply, checks at the first two). */
export function quiescentValue(): i32 {
  return shown(quiesce(-INFINITE, INFINITE, 0, 0, MOVES));
}

/** The static value of the loaded position, from the side to move. */
export function staticValue(): i32 {
  return shown(evaluate());
}
