// Which terms of an amended puzzle did the writer of an answer see? Rule A6: the page's own word, else the
// time where it can tell; else all that can have been seen, and the kinder mark is taken.

/** What is known of the moment of writing. */
export interface Sighting {
  /** Revision that the sender's page showed, as it came; null where none was told. */
  readonly told: number | null;
  /** Latest moment at which it can have been written: of receipt, or the latest that the source states. */
  readonly latest: Date;
}

/** Terms that were replaced: number and moment. */
export interface Replaced {
  readonly revision: number;
  readonly replacedAt: Date;
}

/** A revision as a page may name it; null for anything else, which is then "not told" and no error. */
export function toldRevision(word: unknown, current: number): number | null {
  const number = typeof word === 'string' && /^[1-9]\d{0,5}$/.test(word) ? Number(word) : word;
  const isRevision = typeof number === 'number' && Number.isInteger(number) && number >= 1;
  return isRevision && number <= current ? number : null;
}

/**
 * The revisions that the writer can have seen, newest first: one where it can be told. Terms replaced before
 * the opening were seen by nobody, and nobody saw terms that took force after the writing; a page may have
 * stood open, and a diagram elsewhere may be an old one, so that every revision between stays possible.
 * `replaced` in the order of the revisions.
 */
export function revisionsSeen(
  { told, latest }: Sighting,
  puzzle: {
    readonly current: number;
    readonly opensAt: Date | null;
    readonly replaced: readonly Replaced[];
  },
): readonly number[] {
  const { current, opensAt, replaced } = puzzle;
  const word = toldRevision(told, current);
  if (word !== null) return [word];
  const first = opensAt === null ? 1 : inForceAt(opensAt, puzzle);
  const last = Math.max(first, inForceAt(latest, puzzle));
  return Array.from({ length: last - first + 1 }, (_, at) => last - at).filter(
    (revision) => revision === current || replaced.some((one) => one.revision === revision),
  );
}

/** The revision in force at a moment; at the moment of a replacement the new one. */
function inForceAt(
  moment: Date,
  { current, replaced }: { readonly current: number; readonly replaced: readonly Replaced[] },
): number {
  const next = replaced.find(({ replacedAt }) => moment.getTime() < replacedAt.getTime());
  return next?.revision ?? current;
}
