// In which order are moves tried? The remembered move, captures that win something, killers and the
// known answer, quiet moves by history, losing captures last. A list takes 8 bytes a move: the moves,
// then their ranks.

import { EN_PASSANT, SPECIAL } from './layout';
import { manOn } from './position';
import { seeAtLeast, worthOf } from './see';
import { ANSWERS, HISTORY, KILLERS, PLY_MOVES } from './search-layout';

const FIRST: i32 = 1 << 30;
const WINNING: i32 = 1 << 26;
const KILLER: i32 = 1 << 25;
const LOSING: i32 = -(1 << 26);

// @ts-ignore: decorator
@inline
export function isNoisy(move: u32): bool {
  return manOn((move >> 6) & 63) != 0 || (move >> 12) != 0 && ((move >> 12) & 7) != 0 || (move & SPECIAL) == EN_PASSANT;
}

// @ts-ignore: decorator
@inline
function historyOf(move: u32): usize {
  return HISTORY + ((<usize>manOn(move & 63)) << 8) + ((<usize>((move >> 6) & 63)) << 2);
}

// @ts-ignore: decorator
@inline
function killerOf(ply: i32): usize {
  return KILLERS + ((<usize>ply) << 3);
}

// @ts-ignore: decorator
@inline
function answerOf(ply: i32): usize {
  const last = ply > 0 ? load<u32>(PLY_MOVES + ((<usize>(ply - 1)) << 2)) : 0;
  return ANSWERS + ((<usize>last) << 2);
}

// @ts-ignore: decorator
@inline
function takenWorth(move: u32): i32 {
  const taken = worthOf(manOn((move >> 6) & 63));
  const passing = (move & SPECIAL) == EN_PASSANT && ((move >> 12) & 7) == 0 ? 100 : 0;
  return taken + passing + worthOf((move >> 12) & 7);
}

/** Ranks a list of moves in place (ranks lie behind the moves). */
export function rankMoves(start: usize, end: usize, remembered: u32, ply: i32): void {
  const size = end - start;
  const first = load<u32>(killerOf(ply));
  const second = load<u32>(killerOf(ply), 4);
  const answer = load<u32>(answerOf(ply));
  for (let at = start; at < end; at += 4) {
    const move = load<u32>(at);
    let rank = 0;
    if (move == remembered) rank = FIRST;
    else if (isNoisy(move)) {
      const promoted = (move >> 12) & 7;
      rank = takenWorth(move) * 16 - worthOf(manOn(move & 63)) / 16;
      if (promoted != 0 && promoted != 5) rank += LOSING * 2;
      else rank += seeAtLeast(move, 0) ? WINNING : LOSING;
    } else if (move == first) rank = KILLER + 2;
    else if (move == second) rank = KILLER + 1;
    else if (move == answer) rank = KILLER;
    else rank = load<i32>(historyOf(move));
    store<i32>(at + size, rank);
  }
}

/** Ranks captures for quiescence: the greatest man first, by the least. */
export function rankCaptures(start: usize, end: usize, remembered: u32): void {
  const size = end - start;
  for (let at = start; at < end; at += 4) {
    const move = load<u32>(at);
    const rank = move == remembered ? FIRST : takenWorth(move) * 16 - worthOf(manOn(move & 63)) / 16;
    store<i32>(at + size, rank);
  }
}

/** Brings the best of the moves from `at` on to `at`; returns its rank. */
export function pickBest(start: usize, at: usize, end: usize): i32 {
  const size = end - start;
  let best = at;
  let rank = load<i32>(at + size);
  for (let other = at + 4; other < end; other += 4) {
    const its = load<i32>(other + size);
    if (its > rank) {
      rank = its;
      best = other;
    }
  }
  if (best != at) {
    const move = load<u32>(best);
    store<u32>(best, load<u32>(at));
    store<i32>(best + size, load<i32>(at + size));
    store<u32>(at, move);
    store<i32>(at + size, rank);
  }
  return rank;
}

// @ts-ignore: decorator
@inline
function nudge(slot: usize, amount: i32): void {
  const value = load<i32>(slot);
  store<i32>(slot, value + amount * 32 - (value * abs(amount)) / 512);
}

/** A quiet move has refuted the position: it is tried earlier from now on, those tried in vain later. */
export function rewardQuiet(move: u32, ply: i32, depth: i32, tried: usize, until: usize): void {
  const killer = killerOf(ply);
  if (load<u32>(killer) != move) {
    store<u32>(killer, load<u32>(killer), 4);
    store<u32>(killer, move);
  }
  store<u32>(answerOf(ply), move);
  const amount = min(depth * depth, 400);
  nudge(historyOf(move), amount);
  for (let at = tried; at < until; at += 4) {
    const other = load<u32>(at);
    if (other != move && !isNoisy(other)) nudge(historyOf(other), -amount);
  }
}

/** What history says of a quiet move, about -16,000 to 16,000. */
// @ts-ignore: decorator
@inline
export function historyValue(move: u32): i32 {
  return load<i32>(historyOf(move));
}

/** Notes the move about to be made at a ply: the man and where it goes. */
// @ts-ignore: decorator
@inline
export function notePly(ply: i32, move: u32): void {
  const word = move == 0 ? 0 : (manOn(move & 63) << 6) | ((move >> 6) & 63);
  store<u32>(PLY_MOVES + ((<usize>ply) << 2), word);
}

/** Forgets killers, answers and history. */
export function clearOrder(): void {
  memory.fill(HISTORY, 0, 0x1000);
  memory.fill(KILLERS, 0, 0x1000);
  memory.fill(ANSWERS, 0, 0x1000);
  memory.fill(PLY_MOVES, 0, 0x400);
}
