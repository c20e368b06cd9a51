'use server';

import { revalidatePath } from 'next/cache';
import { addHelper, removeMember } from '#lib/usecases/people/manage-members.ts';
import { say } from '#lib/words/format.ts';
import { requireDoer } from '../../_auth/require-host.ts';
import { puzzleNumber } from '../_parts/find-puzzle.ts';
import { type FormState, noteState, problemState, textOf } from '../_parts/form-state.ts';

/** Lets a helper in. */
export async function addHelperAction(_before: FormState, form: FormData): Promise<FormState> {
  const host = await requireDoer('manage-members');
  const added = await addHelper({
    showId: host.showId,
    memberId: host.id,
    signInName: textOf(form, 'name'),
    password: textOf(form, 'password'),
  });
  if (!added.ok) return problemState(say(host.locale, `desk.claim-${added.reason.code}`), form);
  revalidatePath('/desk/members');
  return noteState(say(host.locale, 'desk.member-added'));
}

/** Takes a helper's rights away. */
export async function removeHelperAction(_before: FormState, form: FormData): Promise<FormState> {
  const host = await requireDoer('manage-members');
  const removed = await removeMember({
    showId: host.showId,
    memberId: host.id,
    subject: puzzleNumber(textOf(form, 'subject')),
  });
  if (!removed.ok) return problemState(say(host.locale, 'desk.member-unknown'), form);
  revalidatePath('/desk/members');
  return noteState(say(host.locale, 'desk.done'));
}
