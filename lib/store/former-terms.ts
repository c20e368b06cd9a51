// Terms that an amendment replaced, with the engine version of their book (rule A6). Appended, never changed.

import type { PuzzleTerms } from '#lib/book/terms.ts';
import type { Tx } from './client.ts';
import { loadTerms, type PuzzleRecord } from './puzzles.ts';
import { parseTerms, writeTerms } from './stored-terms.ts';

/** Terms that were replaced. */
export interface FormerTermsRecord {
  readonly revision: number;
  readonly terms: PuzzleTerms;
  readonly engineVersion: string;
  readonly replacedAt: Date;
}

/** Appends terms that are being replaced; the moment is the database's. */
export async function appendFormerTerms(
  tx: Tx,
  puzzleId: number,
  former: Omit<FormerTermsRecord, 'replacedAt'>,
): Promise<void> {
  const { revision, terms, engineVersion } = former;
  await tx.formerTerms.create({ data: { puzzleId, revision, engineVersion, terms: writeTerms(terms) } });
}

/** Notes that the book of replaced terms was made anew by another engine version; false where there are no such terms. */
export async function saveRenewedFormer(
  tx: Tx,
  {
    puzzleId,
    revision,
    engineVersion,
  }: Pick<FormerTermsRecord, 'revision' | 'engineVersion'> & { puzzleId: number },
): Promise<boolean> {
  const { count } = await tx.formerTerms.updateMany({
    where: { puzzleId, revision },
    data: { engineVersion },
  });
  return count > 0;
}

/** What was replaced, by revision; empty for a puzzle that was never amended. */
export async function listFormerTerms(tx: Tx, puzzle: PuzzleRecord): Promise<FormerTermsRecord[]> {
  if (puzzle.revision === 1) return [];
  const rows = await tx.formerTerms.findMany({
    where: { puzzleId: puzzle.id },
    orderBy: { revision: 'asc' },
  });
  return rows.map(({ revision, terms, engineVersion, replacedAt }) => ({
    revision,
    terms: parseTerms(terms).terms,
    engineVersion,
    replacedAt,
  }));
}

/** The terms of a revision; those in force where there are none of that number. */
export async function loadTermsOf(tx: Tx, puzzle: PuzzleRecord, revision: number): Promise<PuzzleTerms> {
  const former =
    revision === puzzle.revision
      ? []
      : (await listFormerTerms(tx, puzzle)).filter((one) => one.revision === revision);
  return former[0]?.terms ?? loadTerms(tx, puzzle);
}
