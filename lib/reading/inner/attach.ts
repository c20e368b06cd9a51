// How does a token join the tree: going on, across a gap, in the place of another move (branch, choice,
// correction, try), or as the name of a move already read? Rules R3, R4, R5, R10, O4.

import { COST } from './costs.ts';
import { inLanguage, isSolversNumber, languageAfter, numberOf, sideCost } from './fits.ts';
import { type MoveItem, marksOf } from './items.ts';
import {
  type Budget,
  childOf,
  childTowards,
  type Landing,
  landings,
  landingsAfterGap,
  type Node,
  pathTo,
} from './node.ts';
import { goOn, isSolversList, type Plan, replace, tellsReply, walk } from './plans.ts';
import type { Step } from './scan-compact.ts';
import { settle } from './settle.ts';
import { endLine, type State } from './state.ts';

/** Positions looked at where a move may stand in another's place behind gaps. */
const FEW_POSITIONS = 4;

/** Plies from the start within which a thorough search takes a move that could be a reply for the solver's as well. */
const DOUBTED_PLIES = 6;

/** A token about to join. */
export interface Attached {
  readonly state: State;
  readonly item: MoveItem;
  readonly budget: Budget;
  readonly out: State[];
  readonly isTurnedDown: boolean;
  /** Looks across gaps even where the move could be a reply. */
  readonly isThorough?: boolean;
  /** Cannot go on from the cursor in any way. */
  readonly isStuck?: boolean;
}

/** Where the token joins: at the cursor, in the place of a move, or as the name of one. */
export type Relation = 'continue' | 'replace' | 'mention';

/** Adds the states in which the token joins at the node; the least liberty taken, or a large number for none. */
export function attachAt(attached: Attached, node: Node, relation: Relation): number {
  let least = 1000;
  for (const way of attached.item.ways) {
    const first = way[0];
    if (first === undefined) continue;
    least = Math.min(least, joinFirst(attached, node, relation, way, first));
  }
  return least;
}

function joinFirst(
  attached: Attached,
  node: Node,
  relation: Relation,
  way: readonly Step[],
  first: Step,
): number {
  const { state, item, budget } = attached;
  let least = 1000;
  const shapes = inLanguage(first.shapes, state.langs);
  const isBarred = state.badReply !== null && relation === 'continue';
  const direct = isBarred ? [] : landings(node, shapes, budget, relation === 'continue' ? 64 : FEW_POSITIONS);
  for (const landing of direct) {
    least = Math.min(least, join(attached, { node, relation, way, landing, followsGap: false }));
  }
  const isWordedBranch = relation === 'replace' && tellsReply(state, item);
  if ((relation !== 'continue' && !isWordedBranch) || node.by !== 'solver') return least;
  const isNamed =
    item.cues.has('any') ||
    item.cues.has('threat') ||
    item.cues.has('own') ||
    isSolversNumber(state, item, node);
  if (budget.left <= 0) return least;
  const isListing = relation === 'continue' && isSolversList(node);
  const isDoubted = attached.isThorough === true && node.written < DOUBTED_PLIES;
  if (direct.length > 0 && !isNamed && !isListing && !isDoubted) return least;
  for (const landing of landingsAfterGap(node, shapes, budget)) {
    least = Math.min(least, join(attached, { node, relation, way, landing, followsGap: true, isNamed }));
  }
  return least;
}

function gapCost({ followsGap, isNamed, node }: Joint): number {
  if (!followsGap) return 0;
  if (isSolversList(node)) return COST.nextGap;
  return isNamed === true ? COST.namedGap : COST.gap;
}

interface Joint {
  readonly node: Node;
  readonly relation: Relation;
  readonly way: readonly Step[];
  readonly landing: Landing;
  readonly followsGap: boolean;
  readonly isNamed?: boolean;
}

function join(attached: Attached, joint: Joint): number {
  const { state, item } = attached;
  const { node, landing, followsGap } = joint;
  const settled = joint.relation === 'replace' ? settle(state, item, node, landing.uci) : null;
  const known = settled?.child ?? (joint.relation === 'continue' ? null : knownChild(attached, joint));
  if (joint.relation === 'mention' && (known === null || landing.match.cost > 1)) return 1000;
  if (joint.relation === 'replace' && known !== null && settled === null && !isWalkedAgain(attached, known))
    return 1000;
  const start = joint.way[0]?.start ?? item.start;
  const end = joint.way[0]?.end ?? item.end;
  const child =
    known ??
    childOf(node, landing, {
      start,
      end,
      isTypo: item.isTypo,
      ...marksOf(item),
      followsGap,
    });
  const plan = settled?.plan ?? (known !== null ? walk(state, known) : planFor(attached, joint, child));
  if (plan.liberty >= COST.unmarked) return 1000;
  let liberty = plan.liberty + landing.match.cost + (item.isTypo && !known ? COST.typo : 0);
  liberty += gapCost(joint);
  const number = numberOf(state, item, child);
  liberty += number.cost + sideCost(item, node, followsGap);
  const langs = languageAfter(state.langs, landing, joint.way[0]);
  if (langs === null) return 1000;
  liberty += langs.cost;
  let next: State = {
    ...plan.state,
    langs: langs.langs,
    numberOffset: number.offset,
    isFreshBracket: false,
    hasFailed: false,
    badReply: null,
    isGenerous: state.isGenerous || landing.match.isGenerous,
    cost: state.cost + liberty,
  };
  if (joint.way.length > 1) {
    const rest = playRest(next, joint.way.slice(1), attached);
    if (rest === null) return 1000;
    next = rest;
  }
  attached.out.push(next);
  return liberty;
}

/** The further steps of a way that is several moves ("e4e5" as two), each taken only if it leaves no choice. */
function playRest(state: State, steps: readonly Step[], { item, budget }: Attached): State | null {
  let at = state;
  for (const step of steps) {
    const found = landings(at.cursor, step.shapes, budget);
    const landing = found[0];
    if (landing === undefined || found.length > 1) return null;
    const { start, end } = step;
    const child = childOf(at.cursor, landing, {
      start,
      end,
      isTypo: false,
      ...marksOf(item),
      followsGap: false,
    });
    at = {
      ...at,
      cursor: child,
      main: at.kind === 'main' ? child : at.main,
      cost: at.cost + landing.match.cost,
    };
  }
  return at;
}

function knownChild({ state, item }: Attached, { node, landing, relation }: Joint): Node | null {
  for (const tip of [state.cursor, state.main]) {
    const child = childTowards(node, tip);
    if (child === null || child.uci !== landing.uci) continue;
    // "The plan is Nxf7 and Qf3+. 1.Nxf7": what was a plan is now played.
    const isPlayedNow =
      relation === 'replace' && child.isThreat && item.number !== null && !item.cues.has('threat');
    return isPlayedNow ? null : child;
  }
  return null;
}

/** "If Rxf7" twice, or the main line's move again behind a try. */
function isWalkedAgain({ state, item }: Attached, known: Node): boolean {
  if (item.cues.has('branch')) return true;
  const isOnMain = known.parent !== null && childTowards(known.parent, state.main) === known;
  return state.kind === 'try' && isOnMain && item.rejected === 0 && !item.isStruck;
}

function planFor(attached: Attached, joint: Joint, child: Node): Plan {
  const { state, item } = attached;
  const isRejected = item.isStruck || item.rejected > 0;
  if (isRejected || isObjection(attached, joint, child)) {
    const turnedDown = asTry(state, item, child, joint);
    if (turnedDown !== null) attached.out.push(turnedDown);
    const all = turnedDown === null || !isRejected ? null : wholeLine(state, turnedDown);
    if (all !== null) attached.out.push(all);
  }
  const counted = isRejected ? countedCost(item, child) : 0;
  const plan =
    joint.relation === 'continue'
      ? goOn(state, item, child)
      : replace(state, item, joint.node, child, attached.isStuck === true);
  const { liberty } = plan;
  return { state: answersBoth(attached, joint, child) ?? plan.state, liberty: liberty + counted };
}

/** "Kf8 or Kh8, Bxc8": one move behind two replies answers both. Null elsewhere. */
function answersBoth({ state, item, budget }: Attached, joint: Joint, child: Node): State | null {
  const { cursor, main, saved } = state;
  const isBehindTwo =
    state.kind === 'branch' && saved === null && cursor.isAlternative && cursor.parent === main.parent;
  if (!isBehindTwo || joint.relation !== 'continue' || child.by !== 'solver' || child.followsGap) return null;
  const shapes = inLanguage(joint.way[0]?.shapes ?? [], state.langs);
  const landing = landings(main, shapes, budget, FEW_POSITIONS).find(({ uci }) => uci === child.uci);
  if (landing === undefined) return null;
  const { start, end, isTypo } = child;
  const token = { start, end, isTypo, ...marksOf(item), followsGap: false };
  return { ...state, cursor: child, main: childOf(main, landing, token) };
}

/** "Bxf7+ Kxf7 Nxe5+ fails": not the last move alone but the line, if another begins from the start. */
function wholeLine(state: State, turnedDown: State): State | null {
  const root = pathTo(state.main)[0]?.parent;
  if (root == null || state.kind !== 'main' || turnedDown.main === root) return null;
  return { ...turnedDown, main: root, cost: turnedDown.cost + COST.takenBack + 1 };
}

/** "Rd7 but h6", "Rd7. Edit: no, h6": the reply may refute the move, and the text begin anew behind it. */
function isObjection({ state, item }: Attached, { node, relation }: Joint, child: Node): boolean {
  const isNext = relation === 'continue' && state.kind === 'main' && node === state.main;
  const isRefuting = item.cues.has('but') || item.cues.has('restart') || item.cues.has('correct');
  return isNext && child.by === 'defender' && isRefuting;
}

/** A reply that "fails to" something is still the reply; a move of the solver's is turned down. */
function countedCost(item: MoveItem, child: Node): number {
  // "Re8+ Rxe8 and Black is fine": what holds is the reply, what is turned down the line.
  const isLine = item.rejected === 2 && (item.cues.has('well-white') || item.cues.has('well-black'));
  if (child.by === 'defender' && !item.isStruck) return isLine ? COST.doubtedCounts : 0;
  return item.rejected === 1 && !item.isStruck ? COST.doubtedCounts : COST.rejectedCounts;
}

/** Rule R10: shown, neither earning nor costing. */
function asTry(state: State, item: MoveItem, child: Node, joint: Joint): State | null {
  const number = numberOf(state, item, child);
  const langs = languageAfter(state.langs, joint.landing, joint.way[0]);
  if (langs === null) return null;
  // "Bxf7+ Ke7 leads nowhere" turns down the move before the reply.
  const takesBack = child.by === 'defender' && state.kind === 'main' && joint.node === state.main;
  const isOffered = item.cues.has('or') || item.cues.has('slash') || state.saved !== null;
  const isNext = joint.node === state.main || (state.kind === 'main' && !isOffered);
  const isInDoubt = item.rejected === 1 && !item.isStruck && isNext && !takesBack;
  return {
    ...state,
    doubtedAt: isInDoubt ? state.main : state.doubtedAt,
    ended: endLine(state),
    cursor: child,
    main: takesBack ? (joint.node.parent ?? state.main) : state.main,
    kind: 'try',
    langs: langs.langs,
    numberOffset: number.offset,
    isFreshBracket: false,
    hasFailed: false,
    badReply: null,
    cost:
      state.cost +
      joint.landing.match.cost +
      langs.cost +
      (joint.followsGap ? COST.gap : 0) +
      (takesBack ? COST.takenBack : 0),
  };
}

/** Places other than the cursor where a move may join, nearest first; at most fourteen. */
export function otherPlaces(state: State, item: MoveItem): readonly Node[] {
  const places: Node[] = [];
  const add = (node: Node | null | undefined): void => {
    if (node != null && node !== state.cursor && !places.includes(node)) places.push(node);
  };
  add(state.cursor.parent);
  add(state.cursor.parent?.parent);
  if (state.kind !== 'main') {
    add(state.main);
    add(state.main.parent);
    add(state.main.parent?.parent);
  }
  add(state.saved?.node);
  add(state.saved?.node.parent);
  const due = item.number === null || state.numberOffset === null ? null : item.number - state.numberOffset;
  const isCalledFor =
    item.isFreshStart || state.isFreshBracket || item.cues.has('branch') || item.cues.has('or');
  let spare = isCalledFor ? 6 : 0;
  for (let at: Node | null = state.main; at !== null; at = at.parent) {
    const number = at.solverMoves + (at.by === 'defender' ? 1 : 0);
    if (at.parent === null || number === due) add(at);
    else if (spare > 0) {
      add(at);
      spare -= 1;
    }
  }
  return places;
}
