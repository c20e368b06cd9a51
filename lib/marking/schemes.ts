// How many points does an outcome earn? Rule P1: schemes are data, versioned; a mark says under which
// version it was given.

import type { SchemeName } from '#lib/book/terms.ts';
import type { VerdictWord } from '#lib/engine/verdict.ts';
import type { Outcome } from './mark.ts';

/** A marking scheme. The numbers may be edited by a host, who then gives the version a new number. */
export interface Scheme {
  readonly name: SchemeName;
  readonly version: number;
  readonly solved: number;
  readonly slower: number;
  /** Full line: with p >= 1 good moves, `base` + floor(`perLine` * p / r). Null: the first move alone decides. */
  readonly part: { readonly base: number; readonly perLine: number } | null;
}

/** The presets, out of 5 as in solving contests. */
export const SCHEMES: Readonly<Record<SchemeName, Scheme>> = {
  'full-line': { name: 'full-line', version: 1, solved: 5, slower: 2, part: { base: 1, perLine: 3 } },
  'key-move': { name: 'key-move', version: 1, solved: 5, slower: 2, part: null },
};

/** What points are given for. */
export interface Earned {
  readonly outcome: Outcome;
  readonly p: number;
  readonly r: number;
  /** The verdict on the first move; null where there is none. */
  readonly first: VerdictWord | null;
}

/** Points under a scheme. `r` is at least 1. */
export function pointsFor(scheme: Scheme, { outcome, p, r, first }: Earned): number {
  if (scheme.part === null) return first === 'holds' ? scheme.solved : first === 'slower' ? scheme.slower : 0;
  const part = p >= 1 ? scheme.part.base + Math.floor((scheme.part.perLine * p) / r) : 0;
  if (outcome === 'solved') return scheme.solved;
  return outcome === 'slower' ? Math.max(scheme.slower, part) : part;
}
