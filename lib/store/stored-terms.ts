// Terms of a puzzle as data in a column. The version comes first: a form that is not known is refused,
// never guessed at.

import { z } from 'zod';
import type { PuzzleTerms } from '#lib/book/terms.ts';
import { toJson } from './json.ts';

const TERMS = z.strictObject({
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
});

const STORED = z.strictObject({
  v: z.literal(1),
  terms: TERMS,
  words: z.strictObject({ title: z.string(), howFar: z.string().nullable() }).optional(),
});

/** Title and host's sentence that go with terms. */
export interface TermsWords {
  readonly title: string;
  /** Null for the generated sentence. */
  readonly howFar: string | null;
}

/** Terms, with the words that go with them where there are some, as they are stored. */
export function writeTerms(terms: PuzzleTerms, words?: TermsWords) {
  return toJson({ v: 1, terms, words });
}

/** Stored terms; throws where the database holds another form, which is our own mistake. */
export function parseTerms(stored: unknown): { terms: PuzzleTerms; words: TermsWords | undefined } {
  const { terms, words } = STORED.parse(stored);
  return { terms, words };
}
