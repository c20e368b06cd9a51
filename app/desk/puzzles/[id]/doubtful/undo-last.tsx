import type { ReactElement } from 'react';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { ActionForm } from '../../../_parts/action-form.tsx';
import { undoAction } from './actions.ts';
import { reopenLookAction } from './look-actions.ts';

/** Takes the last word back, while its page is open. */
export function UndoLast({
  puzzle,
  locale,
  why,
  look,
}: {
  puzzle: number;
  locale: Locale;
  why: string | null;
  /** Answer whose second look was settled last; 0 where it was something else. */
  look: number;
}): ReactElement | null {
  if (look > 0) {
    return (
      <ActionForm
        action={reopenLookAction}
        submit={say(locale, 'desk.doubtful-undo')}
        className="undo"
        isPlain
      >
        <input type="hidden" name="puzzle" value={puzzle} />
        <input type="hidden" name="answer" value={look} />
        <p className="hint">{say(locale, 'desk.look-settled')}</p>
      </ActionForm>
    );
  }
  if (why === null) return null;
  return (
    <ActionForm action={undoAction} submit={say(locale, 'desk.doubtful-undo')} className="undo" isPlain>
      <input type="hidden" name="puzzle" value={puzzle} />
      <input type="hidden" name="why" value={why} />
      <p className="hint">{say(locale, 'desk.doubtful-settled')}</p>
    </ActionForm>
  );
}
