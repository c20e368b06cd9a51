// Which reading counts, where several survive? Rule R6: the first where all get the same mark; else the best, if
// they differ only in ways that generosity joins; else the host is asked. Strict puzzles take none.

import type { Reading, ReadLine, ReadMove } from '#lib/reading/reading.ts';
import type { Uci } from '#lib/rules/move.ts';
import { parseSquare } from '#lib/rules/position.ts';
import { bestOf } from '../compare-marks.ts';
import type { Judged } from './judge-reading.ts';
import type { WalkContext } from './walk-context.ts';
import { walkLine } from './walk-line.ts';

/** What the readings of a text come to. */
export type Settled =
  | { readonly kind: 'one'; readonly judged: Judged; readonly isGenerous: boolean }
  /** `p` is that of the common beginning. */
  | {
      readonly kind: 'ambiguous' | 'host';
      readonly judged: Judged;
      readonly p: number;
      readonly common: ReadLine;
    };

/** Settles one or more judged readings. */
export function settleReadings(context: WalkContext, all: readonly Judged[]): Settled {
  const [first] = all;
  if (first === undefined) throw new Error('no reading to settle');
  if (all.every((judged) => isSameMark(judged, first)))
    return { kind: 'one', judged: first, isGenerous: false };
  const best = bestOf(all);
  const isJoined = all.every(
    (judged) => isSameMark(judged, best) || canJoin(context, best.reading, judged.reading),
  );
  if (isJoined && !context.facts.terms.isStrict) return { kind: 'one', judged: best, isGenerous: true };
  const common = commonBeginning(all.map(({ reading }) => reading.line));
  const walk = walkLine(
    { ...context, isAsking: false },
    { line: common, endsImpossible: false, isSolverOnly: false },
  );
  const kind = context.facts.terms.isStrict ? 'ambiguous' : 'host';
  return { kind, judged: best, p: walk.p, common };
}

function isSameMark(a: Judged, b: Judged): boolean {
  return (
    a.outcome === b.outcome && a.points === b.points && a.p === b.p && a.r === b.r && a.atMove === b.atMove
  );
}

function commonBeginning(lines: readonly ReadLine[]): ReadLine {
  const [first = []] = lines;
  const length = first.findIndex((move, at) => lines.some((line) => line[at]?.uci !== move.uci));
  return length < 0 ? first : first.slice(0, length);
}

// Men of the same kind, or bishop and b-pawn, to the same square; lines of which one goes on where the other
// ends. Never different squares, never different kinds of men.
function canJoin(context: WalkContext, a: Reading, b: Reading): boolean {
  const at = a.line.findIndex((move, place) => b.line[place]?.uci !== move.uci);
  const one = a.line[at];
  const other = b.line[at];
  if (one === undefined || other === undefined) return true;
  if (one.isTypo !== other.isTypo && target(one.uci) === target(other.uci)) return true;
  if (target(one.uci) !== target(other.uci)) return false;
  const kinds = [kindMoved(context, a.line, at, one), kindMoved(context, b.line, at, other)].sort().join('');
  return kinds[0] === kinds[1] || kinds === 'bp';
}

function target(uci: Uci): string {
  return uci.slice(2, 4);
}

// Both lines are alike up to here, so that any filling of their gaps has the man on its square.
function kindMoved(context: WalkContext, line: ReadLine, at: number, move: ReadMove): string {
  const from = move.uci.slice(0, 2);
  for (let before = at - 1; before >= 0; before -= 1) {
    const earlier = line[before];
    if (earlier === undefined || target(earlier.uci) !== from) continue;
    return earlier.uci.length === 5 ? (earlier.uci[4] ?? '') : kindMoved(context, line, before, earlier);
  }
  const square = parseSquare(from);
  const man = square === null ? 0 : (context.facts.tree.root.position.board[square] ?? 0);
  return '?pnbrqk'[man & 7] ?? '?';
}
