'use server';

import { revalidatePath } from 'next/cache';
import { extendPuzzle } from '#lib/usecases/puzzles/extend-puzzle.ts';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { say } from '#lib/words/format.ts';
import { requireDoer } from '../../../_auth/require-host.ts';
import { puzzleNumber } from '../../_parts/find-puzzle.ts';
import { type FormState, noteState, problemState, textOf } from '../../_parts/form-state.ts';
import { sayCorrectionReason } from '../../_parts/say-deed-reason.ts';

export async function moveCloseAction(_before: FormState, form: FormData): Promise<FormState> {
  const host = await requireDoer('extend-puzzle');
  const opened = await openDeskPuzzle(host.showId, puzzleNumber(textOf(form, 'puzzle')));
  if (opened === null) return problemState(say(host.locale, 'desk.refused-unknown-puzzle'), form);
  const moved = await extendPuzzle({
    puzzleId: opened.record.id,
    memberId: host.id,
    closesAt: textOf(form, 'closesAt'),
    zone: textOf(form, 'zone'),
    note: textOf(form, 'note'),
  });
  if (!moved.ok) return problemState(sayCorrectionReason(moved.reason, host.locale), form);
  revalidatePath(`/desk/puzzles/${opened.record.id}`);
  return noteState(say(host.locale, 'desk.move-close-done'));
}
