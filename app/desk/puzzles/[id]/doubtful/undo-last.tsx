import type { ReactElement } from 'react';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { ActionForm } from '../../../_parts/action-form.tsx';
import { undoAction } from './actions.ts';

/** Takes the last word back, while its page is open. */
export function UndoLast({
  puzzle,
  locale,
  why,
}: {
  puzzle: number;
  locale: Locale;
  why: string | null;
}): ReactElement | null {
  if (why === null) return null;
  return (
    <ActionForm action={undoAction} submit={say(locale, 'desk.doubtful-undo')} className="undo" isPlain>
      <input type="hidden" name="puzzle" value={puzzle} />
      <input type="hidden" name="why" value={why} />
      <p className="hint">{say(locale, 'desk.doubtful-settled')}</p>
    </ActionForm>
  );
}
