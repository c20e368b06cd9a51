'use server';

import { revalidatePath } from 'next/cache';
import { askForSample, removeSample } from '#lib/usecases/puzzles/make-sample.ts';
import { say } from '#lib/words/format.ts';
import { requireDoer } from '../_auth/require-host.ts';
import { type FormState, noteState, problemState } from './_parts/form-state.ts';

/** Asks for sample data; the worker makes it within seconds. */
export async function makeSampleAction(_before: FormState, form: FormData): Promise<FormState> {
  const host = await requireDoer('change-show');
  const asked = await askForSample({ memberId: host.id });
  if (!asked.ok) return problemState(say(host.locale, 'desk.sample-refused'), form);
  return noteState(say(host.locale, 'desk.sample-asked'));
}

/** Removes the sample data as a whole. */
export async function removeSampleAction(): Promise<FormState> {
  const host = await requireDoer('change-show');
  await removeSample({ memberId: host.id });
  revalidatePath('/desk');
  return noteState(say(host.locale, 'desk.done'));
}
