// Who stands where? Rule S1: ties share a rank (1, 2, 2, 4); sum of points, then the number solved,
// never the time.

/** A solver's sum over the puzzles of an episode or season. */
export interface ScoreRow {
  readonly solverId: number;
  readonly points: number;
  readonly solved: number;
}

/** The same with the rank, and whether somebody shares it. */
export type RankedRow<T extends ScoreRow> = T & { readonly rank: number; readonly isShared: boolean };

/**
 * Ranks rows, best first. Those equal in points and in number solved share a rank, and the next rank
 * counts them all. Within a rank the order is that of the solvers' numbers, so that it is the same on
 * every page and says nothing. Sorting: n log n.
 */
export function rankRows<T extends ScoreRow>(rows: readonly T[]): RankedRow<T>[] {
  const sorted = [...rows].sort((a, b) => compareScores(a, b) || a.solverId - b.solverId);
  let rank = 0;
  return sorted.map((row, place) => {
    const before = sorted[place - 1];
    const after = sorted[place + 1];
    const tiesBefore = before !== undefined && compareScores(before, row) === 0;
    if (!tiesBefore) rank = place + 1;
    return { ...row, rank, isShared: tiesBefore || (after !== undefined && compareScores(row, after) === 0) };
  });
}

/** Order of two rows by rule S1: negative where the first stands higher, 0 for a tie. */
export function compareScores(a: ScoreRow, b: ScoreRow): number {
  return b.points - a.points || b.solved - a.solved;
}
