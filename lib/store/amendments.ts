// Amendments in the making: new terms of a published puzzle, verified before they take force (rule A6).

import type { PuzzleTerms } from '#lib/book/terms.ts';
import type { Tx } from './client.ts';
import type { Amendment } from './generated/client.ts';
import { oneOf } from './one-of.ts';
import type { Verified } from './puzzle-moments.ts';
import { parseTerms, type TermsWords, writeTerms } from './stored-terms.ts';

const STATES = ['waiting', 'verified', 'failed', 'in-force', 'cancelled'] as const;
const CLAIMS = ['true', 'false', 'unclear'] as const;

/** An amendment. */
export interface AmendmentRecord extends TermsWords {
  readonly id: number;
  readonly puzzleId: number;
  readonly terms: PuzzleTerms;
  /** The host's words for the notice. */
  readonly note: string;
  readonly state: (typeof STATES)[number];
  /** Null before verification. */
  readonly claim: (typeof CLAIMS)[number] | null;
  readonly report: unknown;
  readonly engineVersion: string | null;
  /** Why verification failed; null otherwise. */
  readonly failure: string | null;
}

function toRecord(row: Amendment): AmendmentRecord {
  const { terms, words } = parseTerms(row.terms);
  return {
    id: row.id,
    puzzleId: row.puzzleId,
    terms,
    title: words?.title ?? '',
    howFar: words?.howFar ?? null,
    note: row.note,
    state: oneOf(STATES, row.state),
    claim: row.claim === null ? null : oneOf(CLAIMS, row.claim),
    report: row.report,
    engineVersion: row.engineVersion,
    failure: row.failure,
  };
}

/** Appends an amendment and gives its number. At most one of a puzzle may be open: an index sees to it. */
export async function appendAmendment(
  tx: Tx,
  asked: TermsWords & {
    readonly puzzleId: number;
    readonly terms: PuzzleTerms;
    readonly note: string;
    readonly memberId: number;
  },
): Promise<number> {
  const { puzzleId, terms, title, howFar, note, memberId } = asked;
  const data = { puzzleId, note, memberId, terms: writeTerms(terms, { title, howFar }) };
  return (await tx.amendment.create({ data, select: { id: true } })).id;
}

/** The amendment that is neither in force nor cancelled; null where there is none. */
export async function loadOpenAmendment(tx: Tx, puzzleId: number): Promise<AmendmentRecord | null> {
  const row = await tx.amendment.findFirst({ where: { puzzleId, decidedAt: null } });
  return row === null ? null : toRecord(row);
}

/** The last amendment, if it was cancelled: what was typed is not lost by it. */
export async function loadCancelledAmendment(tx: Tx, puzzleId: number): Promise<AmendmentRecord | null> {
  const row = await tx.amendment.findFirst({ where: { puzzleId }, orderBy: { id: 'desc' } });
  return row?.state === 'cancelled' ? toRecord(row) : null;
}

/** Keeps what verification found; false where the amendment was decided meanwhile. */
export async function saveAmendmentVerified(tx: Tx, id: number, found: Verified): Promise<boolean> {
  const { count } = await tx.amendment.updateMany({
    where: { id, decidedAt: null },
    data: { ...found, state: 'verified', failure: null },
  });
  return count > 0;
}

/** Keeps why verification failed; it is tried again. */
export async function saveAmendmentFailed(tx: Tx, id: number, failure: string): Promise<void> {
  await tx.amendment.updateMany({ where: { id, decidedAt: null }, data: { state: 'failed', failure } });
}

/** Decides an amendment; false where somebody else has. */
export async function decideAmendment(tx: Tx, id: number, state: 'in-force' | 'cancelled'): Promise<boolean> {
  const count = await tx.$executeRaw`
    update amendment set state = ${state}, decided_at = clock_timestamp() where id = ${id} and decided_at is null`;
  return count > 0;
}
