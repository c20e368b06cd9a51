// Where does a solver stand on the ladder? Rule S2: the running total across seasons; who reaches
// the host's target tops the ladder and starts again from zero.

/** A solver's place: points on the way up, and the puzzles (by place in the list, from 0) that topped the ladder. */
export interface LadderPlace {
  readonly points: number;
  readonly tops: readonly number[];
}

/**
 * Climbs the ladder with a solver's points puzzle by puzzle, oldest first. Points beyond the target
 * are not carried over: the next climb starts from zero. The target is at least 1.
 */
export function climbLadder(pointsByPuzzle: readonly number[], target: number): LadderPlace {
  let points = 0;
  const tops: number[] = [];
  for (const [place, gained] of pointsByPuzzle.entries()) {
    points += gained;
    if (points < target) continue;
    tops.push(place);
    points = 0;
  }
  return { points, tops };
}
