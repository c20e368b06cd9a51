// Was an answer received in time? Rule P2: the half-open interval from opening to close.

/** Whether a puzzle takes answers at a moment: the opening belongs to it, the close does not. Both times must be set. */
export function isOpenAt(
  puzzle: { readonly opensAt: Date | null; readonly closesAt: Date | null },
  moment: Date,
): boolean {
  if (puzzle.opensAt === null || puzzle.closesAt === null) return false;
  return puzzle.opensAt.getTime() <= moment.getTime() && moment.getTime() < puzzle.closesAt.getTime();
}

/** How a time of receipt that is known only as an interval lies to the close (rule P2). */
export type Timeliness = 'in-time' | 'late' | 'early' | 'uncertain';

/**
 * Judges a time of receipt, an interval where the source states only a coarse one. An interval that
 * holds the close counts with the flag `time-uncertain`; one that ends at or before the opening is early.
 */
export function timelinessOf(
  puzzle: { readonly opensAt: Date; readonly closesAt: Date },
  received: { readonly from: Date; readonly to: Date },
): Timeliness {
  const close = puzzle.closesAt.getTime();
  if (received.from.getTime() >= close) return 'late';
  if (received.to.getTime() < puzzle.opensAt.getTime()) return 'early';
  return received.to.getTime() >= close ? 'uncertain' : 'in-time';
}
