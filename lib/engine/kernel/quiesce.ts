// What is the position worth once the captures are played out? Stand-pat; captures and promotions at
// every ply, checks at the first two; all moves when in check.

import { countMoves, generate, generateChecks, generateNoisy } from './generate';
import { AT_LEAST, AT_MOST, foundBound, foundStatic, foundValue, recall, remember } from './hash';
import { MOVE_MASK } from './layout';
import { evaluate } from './evaluate';
import { make, unmake, countRepetitions } from './make';
import { isNoisy, pickBest, rankCaptures, rankMoves } from './order';
import { countNode, isStopped } from './poll';
import { clock, inCheck, manOn, men, occupied, positionKey } from './position';
import { seeAtLeast, worthOf } from './see';
import { MATE, MATE_BOUND, MAX_PLY } from './search-layout';

/** Plies of quiescence at which quiet checks are tried as well. */
const CHECK_PLIES: i32 = 2;

/** Too little on the board for a mate by either side, whatever happens. */
export function cannotBeWon(): bool {
  const all = occupied();
  if (popcnt(all) > 3) return false;
  return ((men(2) | men(3) | men(10) | men(11) | men(6) | men(14)) ^ all) == 0;
}

/** Is the position drawn by repetition within the line, by the fifty-move rule, or for want of men? */
export function isDrawn(): bool {
  if (clock() >= 4 && countRepetitions() > 0) return true;
  if (clock() >= 100 && !(inCheck() && countMoves() == 0)) return true;
  return cannotBeWon();
}

function answerCheck(alpha: i32, beta: i32, ply: i32, depth: i32, list: usize): i32 {
  const end = generate(list);
  if (end == list) return ply - MATE;
  rankMoves(list, end, 0, ply);
  const next = end + (end - list);
  let best = -MATE;
  for (let at = list; at < end; at += 4) {
    pickBest(list, at, end);
    const move = load<u32>(at);
    // Once a defence is known that is no mate, hopeless ones need no look.
    if (best > -MATE_BOUND && at != list && !seeAtLeast(move, 0)) continue;
    make(move);
    const value = -quiesce(-beta, -alpha, ply + 1, depth - 1, next);
    unmake(move);
    if (isStopped()) return 0;
    if (value <= best) continue;
    best = value;
    if (value > alpha) alpha = value;
    if (alpha >= beta) break;
  }
  return best;
}

/** `depth` is 0 at the first ply and falls; fail-soft. */
export function quiesce(alpha: i32, beta: i32, ply: i32, depth: i32, list: usize): i32 {
  countNode();
  if (isStopped()) return 0;
  if (isDrawn()) return 0;
  if (ply >= MAX_PLY - 1) return evaluate();
  if (inCheck()) return answerCheck(alpha, beta, ply, depth, list);
  const key = positionKey();
  let fixed: i32;
  if (recall(key, ply)) {
    const value = foundValue;
    if (foundBound == 3 || (foundBound == AT_LEAST ? value >= beta : value <= alpha)) {
      if (foundDepthAllows(depth)) return value;
    }
    fixed = foundStatic;
  } else fixed = evaluate();
  let best = fixed;
  if (best >= beta) return best;
  const floor = alpha;
  if (best > alpha) alpha = best;
  let end = generateNoisy(list);
  rankCaptures(list, end, 0);
  let next = end + (end - list);
  let chosen: u32 = 0;
  for (let at = list; at < end; at += 4) {
    pickBest(list, at, end);
    const move = load<u32>(at);
    const promoted = (move >> 12) & 7;
    if (promoted != 0 && promoted != 5 && promoted != 2) continue;
    const gain = worthOf(manOn((move >> 6) & 63)) + (promoted ? worthOf(promoted) - 100 : 0);
    if (fixed + gain + 220 <= alpha && popcnt(occupied()) > 7) {
      best = max(best, fixed + gain + 220);
      continue;
    }
    if (!seeAtLeast(move, 0)) continue;
    make(move);
    const value = -quiesce(-beta, -alpha, ply + 1, depth - 1, next);
    unmake(move);
    if (isStopped()) return 0;
    if (value <= best) continue;
    best = value;
    if (value > alpha) {
      alpha = value;
      chosen = move;
    }
    if (alpha >= beta) break;
  }
  if (depth > -CHECK_PLIES && alpha < beta) {
    end = generateChecks(list);
    next = end;
    for (let at = list; at < end; at += 4) {
      const move = load<u32>(at) & MOVE_MASK;
      if (isNoisy(move) || !seeAtLeast(move, 0)) continue;
      make(move);
      const value = -quiesce(-beta, -alpha, ply + 1, depth - 1, next);
      unmake(move);
      if (isStopped()) return 0;
      if (value <= best) continue;
      best = value;
      if (value > alpha) {
        alpha = value;
        chosen = move;
      }
      if (alpha >= beta) break;
    }
  }
  if (depth == 0) remember(key, chosen, best >= beta ? AT_LEAST : best > floor ? 3 : AT_MOST, 0, best, fixed, ply);
  return best;
}

// @ts-ignore: decorator
@inline
function foundDepthAllows(depth: i32): bool {
  // Entries of depth 0 come from the first ply, checks included; later plies may use them too.
  return depth <= 0;
}
