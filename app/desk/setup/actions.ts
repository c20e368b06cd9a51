'use server';

import { redirect } from 'next/navigation';
import { claimSetup } from '#lib/usecases/people/claim-setup.ts';
import { say } from '#lib/words/format.ts';
import { requireOwnPage } from '../../_auth/require-host.ts';
import { deskLocale } from '../_parts/desk-locale.ts';
import { type FormState, problemState, textOf } from '../_parts/form-state.ts';

/** Claims the installation with the code of the setup link. */
export async function claimAction(_before: FormState, form: FormData): Promise<FormState> {
  await requireOwnPage();
  const claimed = await claimSetup({
    // Pasted whole addresses are fine: the code is what stands behind the #.
    token: textOf(form, 'code').trim().split('#').at(-1) ?? '',
    signInName: textOf(form, 'name'),
    password: textOf(form, 'password'),
    showName: textOf(form, 'show'),
    zone: textOf(form, 'zone'),
    locale: textOf(form, 'language') === 'de' ? 'de' : 'en',
  });
  if (!claimed.ok) return problemState(say(await deskLocale(), `desk.claim-${claimed.reason.code}`), form);
  redirect('/desk/sign-in?claimed=yes');
}
