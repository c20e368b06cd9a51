// How many published lines do not pass their own marking (rule V9)? Read off the stored report.

import { z } from 'zod';

const REPORT = z.object({ publishedLines: z.array(z.object({ outcome: z.string() })) });

/** Lines not marked `solved`; 0 where the report names none. */
export function countFailingLines(report: unknown): number {
  const read = REPORT.safeParse(report);
  return read.success ? read.data.publishedLines.filter((line) => line.outcome !== 'solved').length : 0;
}
