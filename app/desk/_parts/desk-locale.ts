import { headers } from 'next/headers';
import { type Locale, pickLocale } from '#lib/words/locale.ts';
import { findHost } from '../../_auth/require-host.ts';

/** The language of the desk: the show's for its members, the browser's before sign-in. */
export async function deskLocale(): Promise<Locale> {
  const host = await findHost();
  return host?.locale ?? pickLocale((await headers()).get('accept-language'));
}
