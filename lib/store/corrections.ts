// Correction notices of published puzzles: appended, never changed (rule A6).

import {
  CHANGES,
  CORRECTION_KINDS,
  type CorrectionKind,
  type PublicCorrection,
} from '#lib/puzzle/correction.ts';
import type { Tx } from './client.ts';
import { toJson } from './json.ts';
import { oneOf } from './one-of.ts';

/** A notice to be written; its time is the database's. */
export interface NewCorrection {
  readonly puzzleId: number;
  readonly kind: CorrectionKind;
  readonly note: string;
  /** Of an amendment: `{changed}`; of a moved close: `{from, to}`. */
  readonly details: Readonly<Record<string, unknown>>;
  /** Revision in force after it. */
  readonly revision: number;
  readonly memberId: number | null;
}

/** Appends a notice. */
export async function appendCorrection(tx: Tx, { details, ...rest }: NewCorrection): Promise<void> {
  await tx.correction.create({ data: { ...rest, details: toJson(details) } });
}

/** The notices of a puzzle, newest first. */
export async function listCorrections(tx: Tx, puzzleId: number): Promise<PublicCorrection[]> {
  const rows = await tx.correction.findMany({ where: { puzzleId }, orderBy: { id: 'desc' } });
  return rows.map(({ kind, at, note, details }) => ({
    kind: oneOf(CORRECTION_KINDS, kind),
    at,
    note,
    ...parseDetails(details),
  }));
}

function parseDetails(details: unknown): Pick<PublicCorrection, 'changed' | 'from' | 'to'> {
  const field = (name: string): unknown =>
    typeof details === 'object' && details !== null ? Reflect.get(details, name) : undefined;
  const moment = (name: string): Date | null => {
    const text = field(name);
    return typeof text === 'string' && text !== '' ? new Date(text) : null;
  };
  const changed = field('changed');
  const codes: readonly unknown[] = Array.isArray(changed) ? changed : [];
  return { changed: CHANGES.filter((one) => codes.includes(one)), from: moment('from'), to: moment('to') };
}
