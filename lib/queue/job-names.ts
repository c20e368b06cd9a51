// The jobs there are and what each carries: ids, never data.

import { z } from 'zod';

const PUZZLE = z.object({ puzzleId: z.number().int() });

/** Job -> shape of its payload. */
export const JOBS = {
  /** Rings the bell: a puzzle has unmarked answers. */
  'mark-answers': PUZZLE,
  /** Verify a puzzle and write its book. */
  'verify-puzzle': PUZZLE,
  /** Verify the new terms of a published puzzle. */
  'verify-amendment': PUZZLE,
  /** Ask the operator's own program what it thinks of a puzzle. */
  'second-opinion': PUZZLE,
  /** Verify what answers have asked for. */
  'extend-book': PUZZLE,
  /** Work out what a regrade would change, or write what the host said yes to. */
  regrade: z.object({ regradeId: z.number().int() }),
  /** Carry out a close whose time has come. */
  'close-puzzle': PUZZLE,
  /** Take in the rest of a stored upload. */
  'import-comments': z.object({ importId: z.number().int() }),
  /** Make the sample data. */
  'make-sample': z.object({ memberId: z.number().int().nullable() }),
} as const;

export type JobName = keyof typeof JOBS;
export type Payload<N extends JobName> = z.infer<(typeof JOBS)[N]>;
