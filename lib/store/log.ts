// The log of deeds. Numbers and codes only, never names or texts. Written as the last thing of a
// transaction: its lock lasts until the commit (see the trigger in the migration).

import type { Tx } from './client.ts';

/** Every deed that is logged, with what belongs to it. */
export type LogEvent =
  | { kind: 'owner-claimed'; memberId: number }
  | { kind: 'member-added' | 'member-removed'; memberId: number | null; details: { subject: number } }
  | { kind: 'show-changed'; memberId: number | null }
  | { kind: 'scheme-edited'; memberId: number; details: { scheme: string; version: number } }
  | { kind: 'puzzle-created' | 'puzzle-changed'; puzzleId: number; memberId: number | null }
  | {
      kind: 'puzzle-verified';
      puzzleId: number;
      details: { claim: string; keys: number; verdicts: number; nodes: number; engine: string };
    }
  | {
      kind: 'puzzle-published';
      puzzleId: number;
      memberId: number | null;
      details: { claim: string; overridden: boolean };
    }
  | { kind: 'puzzle-closed'; puzzleId: number; memberId: number | null; details: { by: 'hand' | 'time' } }
  | { kind: 'close-moved'; puzzleId: number; memberId: number | null; details: { from: string; to: string } }
  | {
      kind: 'amendment-asked' | 'amendment-cancelled';
      puzzleId: number;
      memberId: number | null;
      details: { amendment: number };
    }
  | {
      kind: 'amendment-verified';
      puzzleId: number;
      details: { amendment: number; claim: string; keys: number; verdicts: number; engine: string };
    }
  | {
      kind: 'puzzle-amended';
      puzzleId: number;
      memberId: number | null;
      details: { amendment: number; revision: number; changed: string[]; claim: string; overridden: boolean };
    }
  | { kind: 'puzzle-revealed' | 'puzzle-voided'; puzzleId: number; memberId: number | null }
  | {
      kind: 'answer-received';
      puzzleId: number;
      answerId: number;
      details: { solver: number; channel: string; late: boolean };
    }
  | { kind: 'answers-withdrawn'; puzzleId: number; details: { solver: number; answers: number[] } }
  | {
      kind: 'answers-marked';
      puzzleId: number;
      details: { marked: number; changed: { answer: number; from: number; to: number }[] };
    }
  | {
      kind: 'mark-overruled';
      puzzleId: number;
      answerId: number;
      memberId: number;
      details: { from: number | null; to: number; outcome: string; points: number };
    }
  | {
      kind: 'ruling-made';
      puzzleId: number;
      memberId: number | null;
      details: { ruling: number; of: 'verdict' | 'reading'; waiting: number };
    }
  | {
      kind: 'settlement-undone';
      puzzleId: number;
      memberId: number;
      details: {
        rulings: number[];
        answers: number[];
        /** The overrules taken back, and what is in force for them; null where it is marked again. */
        changed: { answer: number; from: number; to: number | null }[];
      };
    }
  | { kind: 'marking-retried'; puzzleId: number; memberId: number; details: { answers: number[] } }
  | {
      kind: 'look-asked';
      puzzleId: number;
      answerId: number;
      details: { look: number; characters: number };
    }
  | {
      kind: 'look-settled';
      puzzleId: number;
      answerId: number;
      memberId: number;
      details: { look: number; result: 'stands' | 'changed'; mark: number | null };
    }
  | {
      kind: 'look-reopened';
      puzzleId: number;
      answerId: number;
      memberId: number;
      details: { look: number; mark: number | null };
    }
  | {
      kind: 'regrade-asked';
      puzzleId: number;
      memberId: number | null;
      details: { regrade: number | null; answers: number };
    }
  | {
      kind: 'regrade-agreed';
      puzzleId: number;
      memberId: number;
      details: { regrade: number; agreed: number[] };
    }
  | { kind: 'regrade-cancelled'; puzzleId: number; memberId: number; details: { regrade: number } }
  | {
      kind: 'regrade-applied';
      puzzleId: number;
      memberId: number | null;
      details: {
        regrade: number;
        part: number;
        parts: number;
        declined: number;
        changed: { answer: number; from: number; to: number }[];
      };
    }
  | { kind: 'sheet-read'; puzzleId: number; memberId: number; details: { solvers: number[] } }
  | {
      kind: 'book-renewed';
      puzzleId: number;
      details: { revision: number; from: string; to: string; claim: string; keys: number; isTaken: boolean };
    }
  | { kind: 'book-extended'; puzzleId: number; details: { rows: number } }
  | {
      kind: 'check-failed';
      puzzleId: number;
      details: { rows: number };
    }
  | {
      kind: 'comments-imported';
      puzzleId: number;
      memberId: number | null;
      details: { import: number; added: number; known: number; edited: number; refused: number };
    }
  | { kind: 'solvers-joined' | 'solvers-parted'; memberId: number; details: { solver: number; into: number } }
  | { kind: 'name-hidden' | 'name-shown'; memberId: number; details: { solver: number } }
  | { kind: 'sample-made' | 'sample-removed'; memberId: number | null; details: { episodes: number } };

/** Appends one entry. */
export async function appendLog(tx: Tx, event: LogEvent): Promise<void> {
  await tx.log.create({
    data: {
      id: 0,
      kind: event.kind,
      memberId: 'memberId' in event ? event.memberId : null,
      puzzleId: 'puzzleId' in event ? event.puzzleId : null,
      answerId: 'answerId' in event ? event.answerId : null,
      details: 'details' in event ? event.details : {},
    },
  });
}

/** Whether an entry of this kind about the puzzle has these details among its own. */
export async function isLogged(
  tx: Tx,
  entry: { readonly puzzleId: number; readonly kind: LogEvent['kind']; readonly details: object },
): Promise<boolean> {
  const rows = await tx.$queryRaw<{ id: number }[]>`
    select id from log where puzzle_id = ${entry.puzzleId} and kind = ${entry.kind}
      and details::jsonb @> ${JSON.stringify(entry.details)}::jsonb limit 1`;
  return rows.length > 0;
}

/** Numbers of the entries whose hash or place in the chain is not what it must be. */
export async function findBrokenLog(tx: Tx): Promise<number[]> {
  const rows = await tx.$queryRaw<{ id: number }[]>`
    select id from (
      select id, hash, prev_hash, hash_log_entry(log) as due,
        coalesce(lag(hash) over (order by id), repeat('0', 64)) as before, row_number() over (order by id) as place
      from log) as entry
    where hash <> due or prev_hash <> before or id <> place order by id`;
  return rows.map((row) => row.id);
}
