// How many points does an outcome earn? Rule P1: schemes are data, versioned; a mark says under which
// version it was given.

import type { SchemeName } from '#lib/book/terms.ts';
import type { VerdictWord } from '#lib/engine/verdict.ts';
import { ok, type Result, refuse } from '#lib/kit/result.ts';
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

/** Most points that a solved answer can be given. */
export const MOST_POINTS = 100;

/** The numbers of a scheme that a host may edit. `base` and `perLine` are of the full line only. */
export interface SchemeNumbers {
  readonly solved: number;
  readonly slower: number;
  readonly base: number;
  readonly perLine: number;
}

/** Why numbers make no scheme. */
export type SchemeReason =
  | {
      readonly code: 'not-a-number';
      readonly field: keyof SchemeNumbers;
      readonly least: number;
      readonly most: number;
    }
  | { readonly code: 'slower-above-solved' }
  | { readonly code: 'part-above-solved' };

/**
 * The next version of a scheme with other numbers, all whole and from 0 to 100. A part of the line, or a slower mate,
 * may not earn more than all of it: else writing on would cost (rule P3).
 */
export function editScheme(former: Scheme, numbers: SchemeNumbers): Result<Scheme, SchemeReason> {
  const { name, version } = former;
  const { solved, slower, base, perLine } = numbers;
  const fields =
    former.part === null
      ? (['solved', 'slower'] as const)
      : (['solved', 'slower', 'base', 'perLine'] as const);
  for (const field of fields) {
    const least = field === 'solved' ? 1 : 0;
    const number = numbers[field];
    if (!Number.isInteger(number) || number < least || number > MOST_POINTS)
      return refuse({ code: 'not-a-number', field, least, most: MOST_POINTS });
  }
  if (slower > solved) return refuse({ code: 'slower-above-solved' });
  if (former.part !== null && base + perLine > solved) return refuse({ code: 'part-above-solved' });
  const part = former.part === null ? null : { base, perLine };
  return ok({ name, version: version + 1, solved, slower, part });
}

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
