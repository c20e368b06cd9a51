// Which characters became which move, and which became nothing? What the Doubtful list and the receipt show
// beside a text, so that every reading can be explained token by token (rule R8).

import type { Uci } from '#lib/rules/move.ts';
import type { By, Reading, ReadLine } from './reading.ts';

/** What a stretch of the text became. */
export type StretchRole = 'line' | 'branch' | 'choice' | 'try' | 'impossible' | 'text';

/** A stretch of the original text; all stretches of a text in a row are the text. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
  readonly text: string;
  readonly role: StretchRole;
  /** The move it became; null for text and for a move that cannot be played. */
  readonly uci: Uci | null;
  readonly by: By | null;
  readonly isTypo: boolean;
}

interface Claim {
  readonly start: number;
  readonly end: number;
  readonly role: Exclude<StretchRole, 'text'>;
  readonly uci: Uci | null;
  readonly by: By | null;
  readonly isTypo: boolean;
}

/** The text in stretches, in order, for one of its readings. A stretch that two lines share belongs to the first. */
export function explainReading(text: string, reading: Reading): Stretch[] {
  const claims: Claim[] = [];
  const add = (line: ReadLine, role: Claim['role']): void => {
    for (const { start, end, uci, by, isTypo } of line) {
      const isTaken = claims.some((claim) => claim.start < end && start < claim.end);
      if (!isTaken && end > start) claims.push({ start, end, role, uci, by, isTypo });
    }
  };
  add(reading.line, 'line');
  for (const branch of reading.branches) add(branch, 'branch');
  for (const choice of reading.choices) add(choice, 'choice');
  for (const attempt of reading.tries) add(attempt, 'try');
  if (reading.impossibleSpan !== null) {
    const [start, end] = reading.impossibleSpan;
    claims.push({ start, end, role: 'impossible', uci: null, by: null, isTypo: false });
  }
  claims.sort((one, two) => one.start - two.start);
  return stretched(text, claims);
}

function stretched(text: string, claims: readonly Claim[]): Stretch[] {
  const stretches: Stretch[] = [];
  const plain = (start: number, end: number): void => {
    if (end > start) {
      stretches.push({
        start,
        end,
        text: text.slice(start, end),
        role: 'text',
        uci: null,
        by: null,
        isTypo: false,
      });
    }
  };
  let at = 0;
  for (const claim of claims) {
    if (claim.start < at) continue;
    plain(at, claim.start);
    stretches.push({ ...claim, text: text.slice(claim.start, claim.end) });
    at = claim.end;
  }
  plain(at, text.length);
  return stretches;
}
