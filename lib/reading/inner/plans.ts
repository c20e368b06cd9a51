// What becomes of a reading when a move goes on in it, or stands in the place of another move (branch, choice,
// correction, try)? Which lines end there, and what the liberty costs: rules R3, R5, R10, O4.

import { COST } from './costs.ts';
import { isNumberFor } from './fits.ts';
import type { MoveItem } from './items.ts';
import { childTowards, hasReply, type Node } from './node.ts';
import { addLine, endLine, type LineKind, type State } from './state.ts';

/** A reading with one more move, and what that costs. */
export interface Plan {
  readonly state: State;
  readonly liberty: number;
}

/** A move that is already in the tree is walked over, not read twice. */
export function walk(state: State, known: Node): Plan {
  return {
    state: { ...state, ended: endLine(state), cursor: known, kind: known === state.main ? 'main' : 'walk' },
    liberty: COST.mention,
  };
}

/** "If the bishop moves, Rxa7": a branch at a reply that is told in words and named by no move. */
export function tellsReply(state: State, { cues, isFreshStart }: MoveItem): boolean {
  return cues.has('branch') || (cues.has('any') && (isFreshStart || !hasReply(state.cursor)));
}

/** True where the line so far is the solver's moves alone, two at least. */
export function isSolversList(node: Node): boolean {
  let moves = 0;
  for (let at = node; at.parent !== null; at = at.parent) {
    if (at.by === 'defender') return false;
    moves += 1;
  }
  return moves > 1;
}

/** The move goes on from the cursor. */
export function goOn(state: State, item: MoveItem, child: Node): Plan {
  const { cues } = item;
  let liberty =
    child.by === 'defender' && child.parent !== null && isSolversList(child.parent) ? COST.replyInList : 0;
  if (cues.has('or')) liberty += COST.continuesAfterOr;
  else if (cues.has('slash')) liberty += COST.continuesAfterSlash;
  if ((cues.has('correct') || cues.has('restart')) && !state.hasFailed)
    liberty += COST.continuesAfterCorrection;
  if (state.isFreshBracket) liberty += 1;
  // "If c5 then Nf3; if e5 then Nc3" parts where the first reply stood.
  if (cues.has('branch') && item.isFreshStart && child.by === 'defender') liberty += 2;
  if (cues.has('branch') && state.ended?.kind === 'branch' && isBeside(state.ended.node, child)) liberty += 1;
  if (cues.has('menace') && child.by === 'solver') liberty += COST.menaceCounts;
  // Straight behind a reply it is the reply that is refuted.
  if (cues.has('refutation') && child.by === 'solver' && child.followsGap) liberty += COST.refutationCounts;
  if (cues.has('menace-too') && child.by === 'solver') liberty += COST.menaceTooCounts;
  // "I'd go" speaks of the solver's own move.
  if ((cues.has('verdict') || cues.has('own')) && child.by === 'defender') liberty += COST.number;
  // Who threatens plays on: the other side's move is no threat of the one who has just moved.
  if (cues.has('threat') && child.by === 'defender' && !child.followsGap) liberty += COST.number;
  if (state.kind === 'try' && child.by === 'solver') liberty += COST.continuesInTry;
  // A reply straight behind an announced threat answers the move before it.
  if (child.by === 'defender' && child.parent?.isThreat === true) liberty += COST.number;
  if (child.by === 'solver' && isRefuted(child.parent, item)) liberty += COST.number;
  if (cues.has('but') && child.followsGap) liberty += COST.continuesAfterOr;
  if (state.kind === 'walk') return { ...leaveWalk(state, child), liberty };
  return { state: { ...state, cursor: child, main: state.kind === 'main' ? child : state.main }, liberty };
}

/** Both lines part where the move stands. */
function isBeside(line: Node, child: Node): boolean {
  return child.parent !== null && childTowards(child.parent, line) !== null;
}

/** "Rd7? h6!" is over, and so is "Rd7 but h6. Then I saw": a move of the solver's begins anew. */
function isRefuted(reply: Node | null, item: MoveItem): boolean {
  if (reply?.by !== 'defender') return false;
  if (reply.isObjection && item.isNewThought) return true;
  return reply.parent?.isQuestioned === true && (reply.isExclaimed || item.isFreshStart);
}

/** From a move named again the text goes on: along the known line, or away from it. */
function leaveWalk(state: State, child: Node): Plan {
  const from = child.parent;
  const known = from === null ? null : childTowards(from, state.main);
  if (known !== null && known.uci === child.uci) {
    return { state: { ...state, cursor: known, kind: known === state.main ? 'main' : 'walk' }, liberty: 0 };
  }
  if (from === state.main)
    return { state: { ...state, cursor: child, main: child, kind: 'main' }, liberty: 0 };
  const kind: LineKind = child.by === 'defender' ? 'branch' : 'choice';
  return {
    state: { ...state, cursor: child, kind },
    liberty: kind === 'branch' ? COST.cuedBranch : COST.plainChoice,
  };
}

/** The token stands in the place of another move, or resumes the main line. */
export function replace(state: State, item: MoveItem, node: Node, child: Node, isStuck: boolean): Plan {
  const { cues } = item;
  if (node === state.main) {
    const refutes = cues.has('refutation') && child.by === 'solver' ? COST.refutationCounts : 0;
    const resumes = state.kind !== 'try' ? COST.resume : isNewStart(state, item) ? 0 : COST.restartInTry;
    const liberty = resumes + refutes;
    return { state: { ...state, ended: endLine(state), cursor: child, main: child, kind: 'main' }, liberty };
  }
  const replaced = childTowards(node, state.cursor) ?? childTowards(node, state.main);
  const isCorrection = cues.has('correct') || cues.has('restart');
  // A threat that is contradicted was none of the line's moves (rule R10).
  const isTakenBack = replaced?.by === 'solver' && (replaced.isQuestioned || replaced.isThreat);
  if (isCorrection || isTakenBack) return correct(state, item, node, child);
  if (child.by === 'defender' && replaced?.isConditional && isUnconditional(state, item, node)) {
    const branch = addLine(endLine(state), state.main, 'branch');
    return {
      state: { ...state, ended: branch, cursor: child, main: child, kind: 'main' },
      liberty: COST.cuedBranch,
    };
  }
  const ended = endLine(state);
  const hasNumber = isNumberFor(state, item, child);
  const hasCue = hasNumber || cues.has('or') || cues.has('slash') || tellsReply(state, item);
  if (child.by === 'defender' || (node.by === 'solver' && tellsReply(state, item))) {
    const liberty =
      hasCue || state.isFreshBracket
        ? COST.cuedBranch
        : item.hasComma && isStuck // "Ke6 Nc3, Kg8 Bxd5+": a list of replies
          ? COST.plainBranch
          : plainCost(state, item, COST.plainBranch);
    // What parts from a move turned down is turned down with it.
    const isOfTry = state.kind === 'try' && node !== state.main && childTowards(node, state.main) === null;
    return { state: { ...state, ended, cursor: child, kind: isOfTry ? 'try' : 'branch' }, liberty };
  }
  // "If Qe2, not Qxe2+ but Nxc2+": the branch goes on where its try stood.
  if (state.kind === 'try' && endsBranch(state, node))
    return { state: { ...state, ended, cursor: child, kind: 'branch' }, liberty: 0 };
  const isOffered = cues.has('or') || cues.has('slash');
  // "1.Rd8+ (1.Rd7? h6)": what stands in another's place with a "?" is turned down (rule R10).
  const kind: LineKind = item.isQuestioned && !isOffered ? 'try' : 'choice';
  const inBracket = kind === 'try' ? COST.cuedChoice : COST.bracketChoice;
  const isNext = node === state.cursor.parent;
  const liberty =
    isOffered || hasNumber
      ? COST.cuedChoice + (isOffered && !isNext ? 1 : 0)
      : cues.has('but')
        ? COST.bracketChoice
        : state.isFreshBracket
          ? inBracket
          : plainCost(state, item, COST.plainChoice, contradictsNumber(state, item, child));
  return { state: { ...state, ended, cursor: child, kind }, liberty };
}

/** A branch was left at the node. */
function endsBranch({ ended }: State, node: Node): boolean {
  for (let line = ended; line !== null; line = line.before)
    if (line.kind === 'branch' && line.node === node) return true;
  return false;
}

/** Behind a reply that belongs to a try the line begins anew where something says so; else the try goes on. */
function isNewStart({ cursor }: State, item: MoveItem): boolean {
  if (cursor.by === 'solver' || item.isFreshStart || item.number !== null || item.plainWords > 1) return true;
  for (const cue of ['but', 'correct', 'restart', 'or'] as const) if (item.cues.has(cue)) return true;
  return false;
}

/** "If Rxf7 then Qxa8+, so Kg8": the reply without an "if" is the main line's. */
function isUnconditional({ main }: State, { cues }: MoveItem, node: Node): boolean {
  return !cues.has('branch') && !cues.has('or') && !cues.has('slash') && childTowards(node, main) !== null;
}

/** Without any word a move takes another's place only where a sentence, a line or the game begins anew. */
function plainCost(state: State, item: MoveItem, cost: number, isMisnumbered = false): number {
  const isNumbered = item.number !== null && !isMisnumbered;
  const isNew = item.isFreshStart || state.kind === 'walk' || state.kind === 'try' || isNumbered;
  return isNew || !hasReply(state.cursor) ? cost : COST.unmarked;
}

/** "1.Rxh7 Qxh7 2.Qxh7": a second move by its number is no other first one. */
function contradictsNumber({ numberOffset }: State, { number }: MoveItem, child: Node): boolean {
  return number !== null && numberOffset !== null && number - numberOffset !== child.solverMoves;
}

/** Rule R3: what stood there is taken back. */
function correct(state: State, item: MoveItem, node: Node, child: Node): Plan {
  const isRoot = node.parent === null;
  // Behind mate nobody puts the last move right: the whole attempt is meant.
  const isLast = node === state.cursor.parent && hasReply(state.cursor);
  const restarts = item.cues.has('restart');
  const liberty = restarts ? (isRoot ? 0 : 2) : item.cues.has('correct') ? (isLast ? 0 : isRoot ? 1 : 2) : 1;
  const hitsMain = childTowards(node, state.main) !== null;
  const kind: LineKind = hitsMain ? 'main' : state.kind === 'walk' ? 'choice' : state.kind;
  const ended = hitsMain
    ? addLine(endLine(state), state.main, 'try')
    : addLine(state.ended, state.cursor, 'try');
  return { state: { ...state, ended, cursor: child, main: hitsMain ? child : state.main, kind }, liberty };
}
