// The host moves the close as typed into the form: a wall time in a zone, and words for the notice (rule A6).

import { type Result, refuse } from '#lib/kit/result.ts';
import { isZone } from '#lib/kit/zoned-time.ts';
import { type CloseReason, moveClose } from './close-puzzle.ts';
import { type NoteReason, noteOf } from './correction-note.ts';
import { momentOf, type TimeReason } from './set-puzzle.ts';

/** Why the close was not moved. */
export type ExtendReason =
  | CloseReason
  | NoteReason
  | TimeReason
  | { readonly code: 'zone' | 'close-unchanged' };

/** Moves the close. Of an hour that the zone has twice it is the later one: nobody loses time by it. */
export async function extendPuzzle(deed: {
  readonly puzzleId: number;
  readonly memberId: number;
  /** `2026-11-27T18:00`. */
  readonly closesAt: string;
  readonly zone: string;
  /** May be empty. */
  readonly note: string;
}): Promise<Result<null, ExtendReason>> {
  const { puzzleId, memberId, zone } = deed;
  if (!isZone(zone)) return refuse({ code: 'zone' });
  const closesAt = momentOf(deed.closesAt, 'closesAt', zone);
  if (!closesAt.ok) return closesAt;
  const note = noteOf(deed.note);
  if (!note.ok) return note;
  return moveClose({ puzzleId, memberId, closesAt: closesAt.value, note: note.value });
}
