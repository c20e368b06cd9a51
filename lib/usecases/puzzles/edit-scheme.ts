// The owner edits the numbers of a marking scheme: a new version, for puzzles set from now on (rule P1).

import type { SchemeName } from '#lib/book/terms.ts';
import { ok, type Result } from '#lib/kit/result.ts';
import {
  editScheme as editNumbers,
  pointsFor,
  type Scheme,
  type SchemeNumbers,
  type SchemeReason,
} from '#lib/marking/schemes.ts';
import { db, inTransaction } from '#lib/store/client.ts';
import { appendLog } from '#lib/store/log.ts';
import { appendScheme, loadNewestScheme, lockSchemes } from '#lib/store/schemes.ts';

/** A scheme with an example. */
export interface ShownScheme extends Scheme {
  /** Points of two good moves of three. */
  readonly twoOfThree: number;
}

const NAMES = ['full-line', 'key-move'] as const;

/** The schemes that new puzzles of a show are marked by. */
export function showSchemes(showId: number): Promise<ShownScheme[]> {
  return Promise.all(
    NAMES.map(async (name) => {
      const scheme = await loadNewestScheme(db(), showId, name);
      const earned = { outcome: 'unfinished', p: 2, r: 3, first: 'holds' } as const;
      return { ...scheme, twoOfThree: pointsFor(scheme, earned) };
    }),
  );
}

/** Keeps other numbers as the next version; gives it. The same numbers again make no version. */
export function editScheme(edit: {
  readonly showId: number;
  readonly memberId: number;
  readonly name: SchemeName;
  readonly numbers: SchemeNumbers;
}): Promise<Result<Scheme, SchemeReason>> {
  const { showId, memberId, name, numbers } = edit;
  return inTransaction(async (tx) => {
    await lockSchemes(tx, showId);
    const former = await loadNewestScheme(tx, showId, name);
    const next = editNumbers(former, numbers);
    if (!next.ok) return next;
    const { version } = next.value;
    if (JSON.stringify(numbersOf(next.value)) === JSON.stringify(numbersOf(former))) return ok(former);
    await appendScheme(tx, showId, next.value);
    await appendLog(tx, { kind: 'scheme-edited', memberId, details: { scheme: name, version } });
    return next;
  });
}

function numbersOf({ solved, slower, part }: Scheme): readonly (number | null)[] {
  return [solved, slower, part?.base ?? null, part?.perLine ?? null];
}
