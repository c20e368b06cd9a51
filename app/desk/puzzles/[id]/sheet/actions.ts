'use server';

import { revalidatePath } from 'next/cache';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { noteSheetRead } from '#lib/usecases/readout/note-sheet-read.ts';
import { say } from '#lib/words/format.ts';
import { requireDoer } from '../../../../_auth/require-host.ts';
import { puzzleNumber } from '../../../_parts/find-puzzle.ts';
import { type FormState, noteState, problemState, textOf } from '../../../_parts/form-state.ts';
import { lengthOf, paceOf } from './sheet-wish.ts';

/** Notes that the names on the sheet have been read out. */
export async function noteReadAction(_before: FormState, form: FormData): Promise<FormState> {
  const host = await requireDoer('write-sheet-notes');
  const { locale } = host;
  const opened = await openDeskPuzzle(host.showId, puzzleNumber(textOf(form, 'puzzle')));
  if (opened === null) return problemState(say(locale, 'desk.refused-unknown-puzzle'), form);
  const wish = { length: lengthOf(textOf(form, 'length')), wordsAMinute: paceOf(textOf(form, 'pace')) };
  const noted = await noteSheetRead({ puzzleId: opened.record.id, memberId: host.id, locale, ...wish });
  if (!noted.ok) return problemState(say(locale, 'readout.not-yet'), form);
  revalidatePath(`/desk/puzzles/${opened.record.id}/sheet`);
  return noteState(say(locale, 'readout.marked-as-read'));
}
