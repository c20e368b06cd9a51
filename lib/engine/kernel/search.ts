// Principal variation search: which value can both sides force within a depth? Null move with a guard
// against zugzwang, late move reductions, check extensions, transposition table.

import { generate } from './generate';
import { AT_LEAST, AT_MOST, EXACT, foundBound, foundDepth, foundMove, foundStatic, foundValue, recall, remember } from './hash';
import { evaluate } from './evaluate';
import { make, makeNull, unmake, unmakeNull } from './make';
import { historyValue, isNoisy, notePly, pickBest, rankMoves, rewardQuiet } from './order';
import { countNode, isStopped } from './poll';
import { inCheck, men, positionKey, sideToMove } from './position';
import { isDrawn, quiesce } from './quiesce';
import { seeAtLeast } from './see';
import { LINE_LENGTHS, LINES, MATE, MATE_BOUND, MAX_PLY, PLY_VALUES, REDUCTIONS } from './search-layout';

/** ln(n + 1) * 32, whole numbers, without a logarithm at run time: doubling adds 22. */
function slowGrowth(n: i32): i32 {
  let value = 0;
  let rest = n + 1;
  while (rest >= 2) {
    value += 22;
    rest >>= 1;
  }
  const top = 1 << (31 - <i32>clz(n + 1));
  return value + ((n + 1 - top) * 22) / top;
}

/** Fills the table of late move reductions. */
export function initReductions(): void {
  for (let depth = 0; depth < 64; depth++) {
    for (let number = 0; number < 64; number++) {
      const by = (slowGrowth(depth) * slowGrowth(number)) / (32 * 32);
      store<u8>(REDUCTIONS + <usize>(depth * 64 + number), <u8>(depth < 2 || number < 2 ? 0 : (by * 4 + 5) / 9 + (by > 3 ? 1 : 0)));
    }
  }
}

// @ts-ignore: decorator
@inline
function reductionFor(depth: i32, number: i32): i32 {
  return <i32>load<u8>(REDUCTIONS + <usize>(min(depth, 63) * 64 + min(number, 63)));
}

/** Puts `move` in front of the line found one ply deeper. */
export function keepLine(ply: i32, move: u32): void {
  const row = LINES + <usize>ply * (MAX_PLY << 2);
  const below = row + (MAX_PLY << 2);
  const length = min(load<u32>(LINE_LENGTHS + ((<usize>(ply + 1)) << 2)), <u32>(MAX_PLY - 2));
  store<u32>(row, move);
  memory.copy(row + 4, below, (<usize>length) << 2);
  store<u32>(LINE_LENGTHS + ((<usize>ply) << 2), length + 1);
}

// @ts-ignore: decorator
@inline
function endLine(ply: i32): void {
  store<u32>(LINE_LENGTHS + ((<usize>ply) << 2), 0);
}

/** Pieces of the side to move, pawns and king aside. */
// @ts-ignore: decorator
@inline
function pieceCount(): i32 {
  const us = sideToMove();
  return <i32>popcnt(men(us + 2) | men(us + 3) | men(us + 4) | men(us + 5));
}

/** Passing the move and still reaching beta: cut, after a second look where zugzwang is likely. */
function nullMoveCuts(beta: i32, depth: i32, ply: i32, fixed: i32, list: usize): bool {
  const pieces = pieceCount();
  if (pieces == 0) return false;
  const less = 3 + depth / 5 + min((fixed - beta) / 180, 3);
  notePly(ply, 0);
  makeNull();
  const value = -search(-beta, 1 - beta, depth - less - 1, ply + 1, true, list);
  unmakeNull();
  if (isStopped() || value < beta) return false;
  if (pieces > 2 && depth < 12) return true;
  const checked = search(beta - 1, beta, depth - less - 1, ply, true, list);
  return !isStopped() && checked >= beta;
}

/**
 * The value of the position for the side to move, fail-soft. `noNull` forbids passing (after a pass,
 * and while one is looked at again). The list grows from `list` on.
 */
export function search(alpha: i32, beta: i32, depth: i32, ply: i32, noNull: bool, list: usize): i32 {
  endLine(ply);
  const checked = inCheck();
  if (checked) depth = max(depth, 0) + 1;
  if (depth <= 0) return quiesce(alpha, beta, ply, 0, list);
  countNode();
  if (isStopped()) return 0;
  if (isDrawn()) return 0;
  if (ply >= MAX_PLY - 2) return checked ? 0 : evaluate();
  alpha = max(alpha, ply - MATE);
  beta = min(beta, MATE - ply - 1);
  if (alpha >= beta) return alpha;

  const key = positionKey();
  const isPv = beta - alpha > 1;
  let remembered: u32 = 0;
  let fixed: i32 = -MATE;
  if (recall(key, ply)) {
    remembered = foundMove;
    if (!isPv && foundDepth >= depth) {
      if (foundBound == EXACT || (foundBound == AT_LEAST ? foundValue >= beta : foundValue <= alpha)) return foundValue;
    }
    if (!checked) fixed = foundStatic;
  } else if (!checked) fixed = evaluate();
  store<i32>(PLY_VALUES + ((<usize>ply) << 2), fixed);
  const improves = !checked && ply >= 2 && fixed > load<i32>(PLY_VALUES + ((<usize>(ply - 2)) << 2));

  if (!isPv && !checked && abs(beta) < MATE_BOUND) {
    if (depth <= 6 && fixed - 85 * depth + (improves ? 40 : 0) >= beta) return fixed;
    if (!noNull && depth >= 3 && fixed >= beta && nullMoveCuts(beta, depth, ply, fixed, list)) return beta;
    if (isStopped()) return 0;
  }
  if (remembered == 0 && depth >= 5) depth--;
  return tryMoves(alpha, beta, depth, ply, checked, fixed, remembered, improves, list);
}

function tryMoves(
  alpha: i32,
  beta: i32,
  depth: i32,
  ply: i32,
  checked: bool,
  fixed: i32,
  remembered: u32,
  improves: bool,
  list: usize,
): i32 {
  const end = generate(list);
  if (end == list) return checked ? ply - MATE : 0;
  rankMoves(list, end, remembered, ply);
  const next = end + (end - list);
  const isPv = beta - alpha > 1;
  const floor = alpha;
  const key = positionKey();
  let best = -MATE;
  let chosen: u32 = 0;
  let number = 0;
  for (let at = list; at < end; at += 4) {
    const rank = pickBest(list, at, end);
    const move = load<u32>(at);
    const noisy = isNoisy(move);
    const history = noisy ? 0 : historyValue(move);
    const losing = rank < -(1 << 24);
    if (!isPv && !checked && best > -MATE_BOUND && depth <= 8) {
      if (!noisy) {
        if (depth <= 5 && fixed + 110 + 95 * depth <= alpha && rank < 1 << 24 && !mayCheck(move)) continue;
        if (number >= (improves ? 8 : 5) + (depth * depth * 3) / 2 && rank < 1 << 24 && !mayCheck(move)) continue;
        if (depth <= 5 && !seeAtLeast(move, -50 * depth) && !mayCheck(move)) continue;
      } else if (losing && depth <= 4 && !seeAtLeast(move, -110 * depth) && !mayCheck(move)) continue;
    }
    number++;
    notePly(ply, move);
    make(move);
    const gives = inCheck();
    let value: i32;
    if (number == 1) value = -search(-beta, -alpha, depth - 1, ply + 1, false, next);
    else {
      let less = 0;
      if (depth >= 3 && (!noisy || losing)) {
        less = reductionFor(depth, number);
        if (isPv) less--;
        if (!improves) less++;
        if (gives || checked) less -= 1;
        if (rank >= 1 << 24) less--;
        less -= history / 6000;
        less = max(0, min(less, depth - 2));
      }
      value = -search(-alpha - 1, -alpha, depth - 1 - less, ply + 1, false, next);
      if (value > alpha && less > 0) value = -search(-alpha - 1, -alpha, depth - 1, ply + 1, false, next);
      if (value > alpha && value < beta) value = -search(-beta, -alpha, depth - 1, ply + 1, false, next);
    }
    unmake(move);
    if (isStopped()) return 0;
    if (value <= best) continue;
    best = value;
    if (value <= alpha) continue;
    alpha = value;
    chosen = move;
    keepLine(ply, move);
    if (alpha < beta) continue;
    if (!noisy) rewardQuiet(move, ply, depth, list, at);
    break;
  }
  const bound = best >= beta ? AT_LEAST : best > floor ? EXACT : AT_MOST;
  remember(key, chosen, bound, depth, best, checked ? 0 : fixed, ply);
  return best;
}

/** Cheaply: could the move give check? Costs a make; only asked before a move would be left out. */
function mayCheck(move: u32): bool {
  make(move);
  const gives = inCheck();
  unmake(move);
  return gives;
}
