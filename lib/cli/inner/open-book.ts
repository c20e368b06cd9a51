// The solution book of a puzzle on the command line: built as it is before publication, and extended on
// demand.

import { join } from 'node:path';
import type { BookRow, Lacking } from '#lib/book/book-row.ts';
import type { SolutionBook } from '#lib/book/solution-book.ts';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { config } from '#lib/machine/config.ts';
import { openEngine } from './open-engine.ts';

/** Verifies what an answer lacks. */
export type Verify = (lacking: readonly Lacking[]) => BookRow[];

/** A book that has what publication asks for, and the way to more. Endgame tables are kept in the data folder. */
export async function openBook(terms: PuzzleTerms): Promise<{ book: SolutionBook; verify: Verify }> {
  const engine = await openEngine();
  const { openTables } = await import('#lib/machine/engine-jobs.ts');
  const { buildBook } = await import('#lib/book/build-book.ts');
  const { createJudge, verifyLacking } = await import('#lib/book/verify.ts');
  const tables = openTables(join(config().dataDir, 'tables'));
  const book = buildBook({ terms, judge: createJudge(engine, terms, { tables }) });
  return { book, verify: (lacking) => verifyLacking(engine, terms, lacking, { tables }) };
}
