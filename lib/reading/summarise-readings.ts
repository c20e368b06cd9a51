// What do all readings of a text have in common? The line that the command line and the check page show
// first (rules R6, R8); nothing in it depends on a verdict.

import type { Uci } from '#lib/rules/move.ts';
import type { ReadResult } from './reading.ts';

/** What every reading agrees on. */
export interface ReadingSummary {
  /** Longest common beginning of all main lines; empty where they differ at once, null where there is no reading. */
  readonly line: readonly Uci[] | null;
  /** Branches that every reading has, each from the puzzle's position. */
  readonly branches: readonly (readonly Uci[])[];
  readonly readings: number;
  readonly solverOnly: boolean;
  /** Ply of the first move that cannot be played, where all readings name the same; else null. */
  readonly impossibleAt: number | null;
  readonly kind: ReadResult['kind'];
}

/** The common part of the readings of a text. */
export function summariseReadings(result: ReadResult): ReadingSummary {
  const { readings, kind } = result;
  const [first, ...others] = readings;
  if (first === undefined) {
    return { line: null, branches: [], readings: 0, solverOnly: false, impossibleAt: null, kind };
  }
  let line = first.line.map(({ uci }) => uci);
  let branches = first.branches.map((branch) => branch.map(({ uci }) => uci));
  for (const other of others) {
    const moves = other.line.map(({ uci }) => uci);
    const differ = line.findIndex((uci, ply) => moves[ply] !== uci);
    if (differ >= 0) line = line.slice(0, differ);
    const theirs = new Set(other.branches.map((branch) => branch.map(({ uci }) => uci).join(' ')));
    branches = branches.filter((branch) => theirs.has(branch.join(' ')));
  }
  return {
    line,
    branches,
    readings: readings.length,
    solverOnly: readings.every(({ isSolverOnly }) => isSolverOnly),
    impossibleAt: others.every(({ impossibleAt }) => impossibleAt === first.impossibleAt)
      ? first.impossibleAt
      : null,
    kind,
  };
}
