import type { ReactElement } from 'react';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { ActionForm } from './_parts/action-form.tsx';
import { makeSampleAction, removeSampleAction } from './sample-actions.ts';

/** Fills an empty desk with an invented show. */
export function MakeSample({ locale }: { locale: Locale }): ReactElement {
  return (
    <ActionForm action={makeSampleAction} submit={say(locale, 'desk.sample-make')} isPlain>
      <p className="hint">{say(locale, 'desk.sample-hint')}</p>
    </ActionForm>
  );
}

/** Takes the invented show away again. */
export function RemoveSample({ locale }: { locale: Locale }): ReactElement {
  return (
    <ActionForm action={removeSampleAction} submit={say(locale, 'desk.sample-remove')} isPlain>
      <p className="hint">{say(locale, 'desk.sample-remove-hint')}</p>
    </ActionForm>
  );
}
