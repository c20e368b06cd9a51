// The host's words for a correction notice (rule A6): everybody reads them, so they are kept short and plain.

import { ok, type Result, refuse } from '#lib/kit/result.ts';

/** Longest note, in UTF-16 units. */
export const LONGEST_NOTE = 500;

/** Why the words cannot stand. */
export type NoteReason =
  | { readonly code: 'note-empty' }
  | { readonly code: 'note-too-long'; readonly length: number; readonly most: number };

/** The words as they are kept: without NUL, halves of signs and blanks at the ends. */
export function noteOf(typed: string, isNeeded = false): Result<string, NoteReason> {
  const note = typed.replaceAll('\0', '').toWellFormed().trim();
  if (isNeeded && note === '') return refuse({ code: 'note-empty' });
  if (note.length > LONGEST_NOTE)
    return refuse({ code: 'note-too-long', length: note.length, most: LONGEST_NOTE });
  return ok(note);
}
