import type { ReactElement } from 'react';
import { say } from '#lib/words/format.ts';
import { deskLocale } from './_parts/desk-locale.ts';
import { OpenPage } from './_parts/open-page.tsx';

export default async function DeskNotFound(): Promise<ReactElement> {
  const locale = await deskLocale();
  return (
    <OpenPage locale={locale} title={say(locale, 'desk.not-found')}>
      <p>{say(locale, 'desk.not-found-hint')}</p>
      <p>
        <a href="/desk">{say(locale, 'desk.to-episodes')}</a>
      </p>
    </OpenPage>
  );
}
