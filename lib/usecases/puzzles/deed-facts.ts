// What decides whether a host's deed may be done to a puzzle, from the stored row.

import { z } from 'zod';
import type { DeedFacts, DeedReason } from '#lib/puzzle/next-state.ts';
import type { PuzzleRecord } from '#lib/store/puzzles.ts';

/** Why a deed was not done; a puzzle of another show is as unknown as none. */
export type DeedRefusal = DeedReason | { readonly code: 'unknown-puzzle' };

/** Who does a deed to which puzzle. */
export interface Deed {
  readonly puzzleId: number;
  readonly showId: number;
  readonly memberId: number;
}

const PUBLISHED = z.object({ published: z.array(z.object({ outcome: z.string() })) });

/** How many published lines the stored report does not call `solved` (rule V9). */
export function failingLines(report: unknown): number {
  const read = PUBLISHED.safeParse(report);
  return read.success ? read.data.published.filter((line) => line.outcome !== 'solved').length : 0;
}

/** The facts of a stored puzzle. */
export function deedFacts(puzzle: PuzzleRecord, overrideReason: string | null = null): DeedFacts {
  const { verifiedAt, publishedAt, opensAt, closesAt, revealedAt, voidedAt, claim } = puzzle;
  const moments = { verifiedAt, publishedAt, opensAt, closesAt, revealedAt, voidedAt };
  return { ...moments, claim, failingLines: failingLines(puzzle.report), overrideReason };
}
