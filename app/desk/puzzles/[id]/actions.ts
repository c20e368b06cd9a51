'use server';

import { revalidatePath } from 'next/cache';
import type { Result } from '#lib/kit/result.ts';
import type { DeskDeed } from '#lib/people/may.ts';
import type { Host } from '#lib/usecases/people/admit-member.ts';
import { type CloseReason, closePuzzle } from '#lib/usecases/puzzles/close-puzzle.ts';
import { type NoteReason, noteOf } from '#lib/usecases/puzzles/correction-note.ts';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { type PublishReason, publishPuzzle } from '#lib/usecases/puzzles/publish-puzzle.ts';
import { type RevealReason, revealPuzzle } from '#lib/usecases/puzzles/reveal-puzzle.ts';
import { say } from '#lib/words/format.ts';
import { requireDoer } from '../../../_auth/require-host.ts';
import { puzzleNumber } from '../../_parts/find-puzzle.ts';
import { type FormState, noteState, problemState, textOf } from '../../_parts/form-state.ts';
import { sayCorrectionReason } from '../../_parts/say-deed-reason.ts';
import { sayOpenRulings } from './say-open-rulings.ts';

type Deed = (
  host: Host,
  puzzleId: number,
) => Promise<Result<unknown, CloseReason | PublishReason | RevealReason | NoteReason>>;

/** Does one deed to the puzzle that the form names, if it is the host's and the right is there. */
async function done(form: FormData, right: DeskDeed, deed: Deed): Promise<FormState> {
  const host = await requireDoer(right);
  const opened = await openDeskPuzzle(host.showId, puzzleNumber(textOf(form, 'puzzle')));
  if (opened === null) return problemState(say(host.locale, 'desk.refused-unknown-puzzle'), form);
  const result = await deed(host, opened.record.id);
  if (!result.ok) {
    const { reason } = result;
    return reason.code === 'rulings-open'
      ? problemState(sayOpenRulings(reason.open, host.locale), form)
      : problemState(sayCorrectionReason(reason, host.locale), form);
  }
  revalidatePath(`/desk/puzzles/${opened.record.id}`);
  return noteState(say(host.locale, 'desk.done'));
}

export async function publishAction(_before: FormState, form: FormData): Promise<FormState> {
  const overrideReason = textOf(form, 'reason').trim() || null;
  return done(form, 'publish-puzzle', (host, puzzleId) =>
    publishPuzzle({ puzzleId, memberId: host.id, overrideReason }),
  );
}

export async function closeAction(_before: FormState, form: FormData): Promise<FormState> {
  return done(form, 'close-puzzle', (host, puzzleId) => closePuzzle({ puzzleId, memberId: host.id }));
}

/** Reveals; moves that are still unclear go along only where the form names them (rule V8). */
export async function revealAction(_before: FormState, form: FormData): Promise<FormState> {
  const agreed = form.getAll('agreed').filter((one) => typeof one === 'string');
  return done(form, 'reveal-puzzle', (host, puzzleId) =>
    revealPuzzle({ puzzleId, memberId: host.id, agreed }),
  );
}

export async function voidAction(_before: FormState, form: FormData): Promise<FormState> {
  return done(form, 'void-puzzle', async (host, puzzleId) => {
    const note = noteOf(textOf(form, 'note'));
    return note.ok ? revealPuzzle({ puzzleId, memberId: host.id, asVoid: true, note: note.value }) : note;
  });
}
