import type { Metadata } from 'next';
import type { ReactElement } from 'react';
import { say } from '#lib/words/format.ts';
import { deskLocale } from '../_parts/desk-locale.ts';
import { OpenPage } from '../_parts/open-page.tsx';
import { ZONES } from '../_parts/zones.ts';
import { claimAction } from './actions.ts';
import { SetupForm } from './setup-form.tsx';

export async function generateMetadata(): Promise<Metadata> {
  return { title: say(await deskLocale(), 'desk.setup') };
}

export default async function SetupPage(): Promise<ReactElement> {
  const locale = await deskLocale();
  const words = {
    code: say(locale, 'desk.setup-code'),
    codeHint: say(locale, 'desk.setup-code-hint'),
    show: say(locale, 'desk.show-name'),
    zone: say(locale, 'desk.zone'),
    language: say(locale, 'desk.language'),
    name: say(locale, 'desk.sign-in-name'),
    nameHint: say(locale, 'desk.sign-in-name-hint'),
    password: say(locale, 'desk.password'),
    passwordHint: say(locale, 'desk.password-hint'),
    submit: say(locale, 'desk.setup-submit'),
  };
  return (
    <OpenPage locale={locale} title={say(locale, 'desk.setup')}>
      <p>{say(locale, 'desk.setup-intro')}</p>
      <SetupForm action={claimAction} words={words} zones={ZONES} locale={locale} />
    </OpenPage>
  );
}
