// Which ways to read the tokens cost least? A search over partial readings, token by token, with the legal
// moves of the positions reached (rule R2). Bounded by states and steps (rule R7), the same on any machine.

import type { Position } from '#lib/rules/position.ts';
import { type Attached, attachAt, otherPlaces } from './attach.ts';
import { COST, RARITY_COST } from './costs.ts';
import { namesStandingMan } from './history.ts';
import type { Item, MoveItem } from './items.ts';
import { rarityOf } from './letters.ts';
import { type Budget, childTowards, hasReply, type Node, pathTo, rootOf } from './node.ts';
import type { ScanContext } from './scan-compact.ts';
import { mendedShapes } from './slips.ts';
import { addLine, endLine, type State, startAt } from './state.ts';

/** Partial readings kept after each token, and how far behind the best they may be. */
const MOST_STATES = 32;
const WIDEST = 36;
/** Partial readings carried on once the steps are spent. */
const SPENT_STATES = 3;

/** Cues that do not move a token to another place. */
const QUIET_CUES: ReadonlySet<string> = new Set([
  'any',
  'threat',
  'menace',
  'menace-too',
  'own',
  'says',
  'played',
  'threat-white',
  'threat-black',
  'white',
  'black',
]);

/** What the search needs beside the items. */
export interface SearchTask {
  readonly position: Position;
  readonly text: string;
  readonly items: readonly Item[];
  readonly context: ScanContext;
  /** Looks for gaps, branches and choices everywhere, not only where a word calls for it. */
  readonly isThorough: boolean;
  /** Most readings kept. */
  readonly mostReadings: number;
}

/** All cheapest states at the end of the text, in no order. */
export function searchReadings(task: SearchTask, budget: Budget): State[] {
  let states: State[] = [startAt(rootOf(task.position))];
  for (const item of task.items) {
    const next: State[] = [];
    for (const state of states) advance(state, item, task, budget, next);
    states = next.length > 1 ? keepBest(next, budget.left > 0 ? task.mostReadings : SPENT_STATES) : next;
  }
  let cheapest = Number.POSITIVE_INFINITY;
  const ends = states.map((state) => {
    const cost = finalCost(state);
    cheapest = Math.min(cheapest, cost);
    return { state, cost };
  });
  return ends.filter(({ cost }) => cost === cheapest).map(({ state, cost }) => ({ ...state, cost }));
}

function finalCost(state: State): number {
  const rarity = state.langs === -1 ? 0 : (RARITY_COST[rarityOf(state.langs)] ?? 5);
  const isEmpty = state.main.parent === null && state.stop === null;
  // "... Ba6# would be mate": with nothing in its place the doubtful move is the writer's.
  const isUnreplaced = !isEmpty && state.stop === null && state.doubtedAt === state.main;
  return state.cost + rarity + (isEmpty ? COST.noMainLine : 0) + (isUnreplaced ? COST.doubtUnreplaced : 0);
}

function keepBest(states: State[], mostReadings: number): State[] {
  states.sort((one, two) => one.cost - two.cost);
  const least = states[0]?.cost ?? 0;
  const most = Math.min(MOST_STATES, mostReadings);
  let kept = 0;
  while (kept < states.length && kept < most && (states[kept]?.cost ?? 0) <= least + WIDEST) kept += 1;
  states.length = kept;
  return states;
}

function advance(state: State, item: Item, task: SearchTask, budget: Budget, out: State[]): void {
  if (item.type === 'open') {
    const saved = { node: state.cursor, kind: state.kind, before: state.saved };
    out.push({ ...state, saved, isFreshBracket: true });
  } else if (item.type === 'close') closeBracket(state, out);
  else if (item.type === 'move') takeMove(state, item, { task, budget, out });
}

/**
 * After a bracket the text goes on where it stood before, unless the bracket only went on itself; and even
 * then it may have been a branch ("Nxe5 (if dxe5 Qxg4) Bxd1").
 */
function closeBracket(state: State, out: State[]): void {
  const { saved } = state;
  if (saved === null) {
    out.push({ ...state, isFreshBracket: false });
    return;
  }
  const closed = { ...state, saved: saved.before, isFreshBracket: false };
  const wentOn = state.kind === saved.kind && isAtOrBelow(state.cursor, saved.node);
  if (!wentOn) {
    const cursor = saved.kind === 'main' ? state.main : saved.node;
    out.push({ ...closed, ended: endLine(state), cursor, kind: saved.kind });
    return;
  }
  out.push(closed);
  const first = childTowards(saved.node, state.cursor);
  if (saved.kind !== 'main' || first?.by !== 'defender' || first.followsGap) return;
  const ended = addLine(state.ended, state.cursor, 'branch');
  out.push({ ...closed, ended, cursor: saved.node, main: saved.node, cost: state.cost + COST.cuedBranch });
}

function isAtOrBelow(node: Node, ancestor: Node): boolean {
  for (let at: Node | null = node; at !== null; at = at.parent) if (at === ancestor) return true;
  return false;
}

interface Move {
  readonly task: SearchTask;
  readonly budget: Budget;
  readonly out: State[];
}

function takeMove(state: State, item: MoveItem, run: Move): void {
  const { out, task, budget } = run;
  const isSure = item.prose === 0 && !item.isMalformed;
  if (state.stop !== null) {
    out.push(isSure ? { ...state, cost: state.cost + COST.dropped } : state);
    const isMeant = isSure || (item.prose < 3 && item.isBareSquare);
    const again = isMeant && budget.left > 0 ? anew(state, item, task.position) : null;
    if (again !== null) takeMove(again, item, run);
    return;
  }
  const skipAt = out.length;
  if (!isSure) out.push({ ...state, cost: state.cost + skipCost(item) });
  else if (item.cues.has('menace') && state.cursor.by === 'defender') out.push(state);
  else if (item.cues.has('menace-too') && state.cursor.by === 'defender')
    out.push({ ...state, cost: state.cost + COST.skippedMenaceToo });
  else if (item.cues.has('threat')) out.push({ ...state, cost: state.cost + COST.skippedThreat });
  if (item.prose === 3) return;
  if (budget.left <= 0) {
    // The steps are spent: what simply goes on is still read.
    const wentOn = attachAt({ state, item, budget, out, isTurnedDown: false }, state.cursor, 'continue');
    if (wentOn > 20 && isSure) out.push({ ...state, cost: state.cost + COST.skippedMove });
    return;
  }
  const { isThorough } = task;
  const attached: Attached = { state, item, budget, out, isTurnedDown: false, isThorough };
  const before = out.length;
  const best = item.isMalformed ? Number.POSITIVE_INFINITY : attachAt(attached, state.cursor, 'continue');
  // A square that goes on well is rather a move than prose.
  if (item.prose === 2 && best <= 2) out[skipAt] = { ...state, cost: state.cost + COST.skippedLikely };
  if (!item.isMalformed && (isThorough || best > 2 || wantsOthers(state, item))) {
    const moved = { ...attached, isStuck: best >= 1000 };
    for (const place of otherPlaces(state, item)) attachAt(moved, place, 'replace');
  }
  if (out.length > before && best < 20) return;
  if (out.length === before) unreadable(state, item, run);
}

/** Rule R3: an attempt that could not be played is over where the writer corrects it. Null where he does not. */
function anew(state: State, { cues }: MoveItem, position: Position): State | null {
  if (!cues.has('restart') && !cues.has('correct')) return null;
  const root = pathTo(state.main)[0]?.parent ?? rootOf(position);
  const ended = state.main === root ? endLine(state) : addLine(endLine(state), state.main, 'try');
  const { langs, cost } = state;
  return { ...startAt(root), ended, langs, hasFailed: true, cost: cost + COST.takenBack };
}

function skipCost(item: MoveItem): number {
  if (item.isMalformed && item.prose < 2) return COST.skippedMalformed;
  if (item.prose === 3) return 0;
  return item.prose === 2 ? COST.skippedProse : COST.skippedLikely;
}

/** True where a word, a bracket or a number says that the move may not simply go on. */
function wantsOthers(state: State, item: MoveItem): boolean {
  if (state.kind !== 'main' || state.isFreshBracket) return true;
  if (item.rejected > 0 || item.isStruck) return true;
  if (item.number !== null && item.number <= state.cursor.solverMoves + (state.numberOffset ?? 0))
    return true;
  if (state.cursor.isQuestioned || state.cursor.parent?.isQuestioned === true) return true;
  for (const cue of item.cues) if (!QUIET_CUES.has(cue)) return true;
  return false;
}

/** The token is no legal move anywhere: named again, a slip (R13), an unplayable reply (R12), or the end. */
function unreadable(state: State, item: MoveItem, run: Move): void {
  const { out } = run;
  const before = out.length;
  const attached: Attached = { state, item, budget: run.budget, out, isTurnedDown: false };
  if (!item.isMalformed && (item.isSetOff || !hasReply(state.cursor))) {
    for (const node of pathTo(state.main).slice(0, 12)) {
      if (node.parent !== null && attachAt(attached, node.parent, 'mention') < 100) break;
    }
  }
  if (out.length > before) return;
  const mended = mendedShapes(run.task.text, item, {
    node: state.cursor,
    langs: state.langs,
    context: run.task.context,
    budget: run.budget,
  });
  if (mended !== null) {
    attachAt(
      { ...attached, item: { ...item, ways: [[mended]], isMalformed: false, isTypo: true } },
      state.cursor,
      'continue',
    );
    if (out.length > before) return;
  }
  if (item.isMalformed || item.prose > 0) return;
  if (item.rejected > 0 || item.isStruck || item.isTakenBack || item.isQuestioned) {
    out.push({ ...state, hasFailed: true, cost: state.cost + COST.takenBack });
    return;
  }
  if (isToldBefore(state, item)) out.push({ ...state, cost: state.cost + COST.toldBefore });
  // "6.c8=Q? (Rc4+ Qxc4 stalemate)": what refutes a try that cannot stand here cannot stand here either.
  if (state.kind !== 'main' || (state.hasFailed && state.saved !== null)) {
    out.push({ ...state, cost: state.cost + COST.skippedInSideLine });
    return;
  }
  const span = { ply: state.main.written + 1, start: item.start, end: item.end };
  out.push({ ...state, stop: state.badReply ?? span, badReply: null, cost: state.cost + COST.stop });
  if (state.badReply === null && canBeBadReply(state, item)) {
    out.push({ ...state, badReply: span, isGenerous: true, cost: state.cost + COST.badReply });
  }
}

/**
 * Before any answer: a man named by the square on which he stands ("Ne7 guards g8"), or a move behind the
 * defender's dots ("...Qc1 is coming").
 */
function isToldBefore({ main, kind }: State, item: MoveItem): boolean {
  if (main.parent !== null || kind !== 'main') return false;
  if (item.number === null && item.dots > 1) return true;
  const [position] = main.positions;
  return item.number === null && position !== undefined && namesStandingMan(item, position);
}

/** Rule R12 speaks of replies: not where the number says it is the solver's move, nor in a solver-only list. */
function canBeBadReply(state: State, item: MoveItem): boolean {
  const { cursor } = state;
  if (cursor.by !== 'solver' || !hasReply(cursor)) return false;
  const isSolversNumber =
    item.number !== null &&
    state.numberOffset !== null &&
    item.dots < 2 &&
    item.number > cursor.solverMoves + state.numberOffset;
  if (isSolversNumber) return false;
  const path = pathTo(cursor);
  return path.length < 2 || path.some(({ by }) => by === 'defender');
}
