// Terms that an amendment replaced, with the engine version of their book (rule A6). Appended, never changed.

import { z } from 'zod';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import type { Tx } from './client.ts';
import { toJson } from './json.ts';
import { loadTerms, type PuzzleRecord } from './puzzles.ts';

/** Terms as data. The version comes first: a form that is not known is refused, never guessed at. */
const TERMS = z.strictObject({
  v: z.literal(1),
  terms: z.strictObject({
    fen: z.string(),
    task: z.union([
      z.strictObject({ kind: z.literal('mate'), moves: z.int() }),
      z.strictObject({ kind: z.enum(['win', 'draw']) }),
    ]),
    published: z.array(z.string()),
    scheme: z.enum(['full-line', 'key-move']),
    winBound: z.int(),
    slipBound: z.int(),
    drawBound: z.int(),
    drawSlipBound: z.int(),
    anyDefence: z.boolean(),
    mateWritten: z.boolean(),
    solverMoves: z.int().nullable(),
    isStrict: z.boolean(),
    proofNodes: z.int(),
    budgetNodes: z.int(),
  }),
});

/** Terms as they are stored. */
export function writeTerms(terms: PuzzleTerms) {
  return toJson({ v: 1, terms });
}

/** Stored terms; throws where the database holds another form, which is our own mistake. */
export function parseTerms(stored: unknown): PuzzleTerms {
  return TERMS.parse(stored).terms;
}

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

/** What was replaced, by revision; empty for a puzzle that was never amended. */
export async function listFormerTerms(tx: Tx, puzzle: PuzzleRecord): Promise<FormerTermsRecord[]> {
  if (puzzle.revision === 1) return [];
  const rows = await tx.formerTerms.findMany({
    where: { puzzleId: puzzle.id },
    orderBy: { revision: 'asc' },
  });
  return rows.map(({ revision, terms, engineVersion, replacedAt }) => ({
    revision,
    terms: parseTerms(terms),
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
