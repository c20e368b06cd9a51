import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import type { ReactElement } from 'react';
import { say } from '#lib/words/format.ts';
import { findHost, formToken } from '../../_auth/require-host.ts';
import { deskLocale } from '../_parts/desk-locale.ts';
import { TextField } from '../_parts/field.tsx';
import { OpenPage } from '../_parts/open-page.tsx';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say(await deskLocale(), 'desk.sign-in') };
}

interface Input {
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
}

export default async function SignInPage({ searchParams }: Input): Promise<ReactElement> {
  if ((await findHost()) !== null) redirect('/desk');
  const asked = await searchParams;
  const token = await formToken();
  // The sign-in gives its own cookie first and then leads back here.
  if (token === null && asked.callbackUrl === undefined)
    redirect(`/api/auth/signin?callbackUrl=/desk${asked.claimed === undefined ? '' : '?claimed'}`);
  const locale = await deskLocale();
  const problem = token === null ? 'no-cookies' : problemOf(asked.error);
  return (
    <OpenPage locale={locale} title={say(locale, 'desk.sign-in')}>
      {!isJustClaimed(asked) ? null : <p className="note">{say(locale, 'desk.claimed')}</p>}
      {problem === null ? null : (
        <p className="problem" role="alert">
          {say(locale, `desk.sign-in-${problem}`)}
        </p>
      )}
      <form method="post" action="/api/auth/callback/credentials" className="stack">
        <input type="hidden" name="csrfToken" value={token ?? ''} />
        <input type="hidden" name="callbackUrl" value="/desk" />
        <TextField
          name="name"
          label={say(locale, 'desk.sign-in-name')}
          type="text"
          required
          autoComplete="username"
          autoCapitalize="none"
          maxLength={60}
        />
        <TextField
          name="password"
          label={say(locale, 'desk.password')}
          type="password"
          required
          autoComplete="current-password"
          maxLength={200}
        />
        <button type="submit">{say(locale, 'desk.sign-in')}</button>
      </form>
    </OpenPage>
  );
}

/** Straight from the setup page, or by way of the cookie that the sign-in gives first. */
function isJustClaimed(asked: Awaited<Input['searchParams']>): boolean {
  return asked.claimed !== undefined || String(asked.callbackUrl ?? '').endsWith('?claimed');
}

function problemOf(error: string | string[] | undefined): 'wrong' | 'too-many-tries' | null {
  if (error === undefined) return null;
  return error === 'too-many-tries' ? 'too-many-tries' : 'wrong';
}
