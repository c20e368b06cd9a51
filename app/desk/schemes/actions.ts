'use server';

import { revalidatePath } from 'next/cache';
import { editScheme } from '#lib/usecases/puzzles/edit-scheme.ts';
import { say } from '#lib/words/format.ts';
import { requireDoer } from '../../_auth/require-host.ts';
import { type FormState, noteState, problemState, textOf } from '../_parts/form-state.ts';

/** Keeps other numbers as the next version of a scheme. */
export async function editSchemeAction(_before: FormState, form: FormData): Promise<FormState> {
  const { id, showId, locale } = await requireDoer('change-show');
  const number = (field: string): number => {
    const text = textOf(form, field).trim();
    return /^\d{1,6}$/.test(text) ? Number(text) : Number.NaN;
  };
  const edited = await editScheme({
    showId,
    memberId: id,
    name: textOf(form, 'scheme') === 'key-move' ? 'key-move' : 'full-line',
    numbers: {
      solved: number('solved'),
      slower: number('slower'),
      base: number('base'),
      perLine: number('perLine'),
    },
  });
  if (!edited.ok)
    return problemState(say(locale, `desk.scheme-wrong-${edited.reason.code}`, { ...edited.reason }), form);
  revalidatePath('/desk/schemes');
  return noteState(say(locale, 'desk.scheme-saved', { version: edited.value.version }));
}
