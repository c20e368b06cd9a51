// In which order are names read out? Those with something to say first, by what is said; names that
// were read out on one of the last sheets step back.

import type { ThingToSay } from '#lib/standings/things-to-say.ts';

/** A solver who may be named. */
export interface SheetName {
  readonly solverId: number;
  readonly name: string;
  readonly things: readonly ThingToSay[];
  /** How many sheets ago the name was last read out (1 is the last one); null for never. */
  readonly readOutAgo: number | null;
  /** Another solver's name that this one could be taken for; null where none. */
  readonly looksLike: string | null;
  /** False for one who did not solve this puzzle and is named only to be put right. */
  readonly isSolver?: boolean;
}

const WEIGHT: Readonly<Record<ThingToSay['code'], number>> = {
  'put-right': 0,
  'topped-ladder': 1,
  'only-other-way': 2,
  run: 3,
  'first-time': 4,
  return: 5,
  'found-both': 6,
  'best-defence': 7,
  'good-words': 8,
};

/** Sheets during which a name that was read out steps back. */
const STEP_BACK_SHEETS = 3;

/**
 * The names in order of reading: corrections, then names not heard lately, then those heard lately
 * (the longest ago first); within each by the first thing to say, then by the solver's number.
 */
export function orderNames(names: readonly SheetName[]): SheetName[] {
  return [...names].sort(
    (a, b) => turnOf(a) - turnOf(b) || weightOf(a) - weightOf(b) || a.solverId - b.solverId,
  );
}

function turnOf(name: SheetName): number {
  if (name.things[0]?.code === 'put-right') return 0;
  if (name.readOutAgo === null || name.readOutAgo > STEP_BACK_SHEETS) return 1;
  return 2 + (STEP_BACK_SHEETS - name.readOutAgo);
}

function weightOf(name: SheetName): number {
  const first = name.things[0];
  return first === undefined ? 9 : WEIGHT[first.code];
}
