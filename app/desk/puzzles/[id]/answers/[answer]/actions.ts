'use server';

import { revalidatePath } from 'next/cache';
import { overruleMark } from '#lib/usecases/answers/overrule-mark.ts';
import { showMark } from '#lib/usecases/answers/show-mark.ts';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { say } from '#lib/words/format.ts';
import { requireDoer } from '../../../../../_auth/require-host.ts';
import { puzzleNumber } from '../../../../_parts/find-puzzle.ts';
import { type FormState, noteState, problemState, textOf } from '../../../../_parts/form-state.ts';

/** Overrules the mark of an answer, with a reason. */
export async function overruleAction(_before: FormState, form: FormData): Promise<FormState> {
  const host = await requireDoer('overrule-mark');
  const { locale } = host;
  const opened = await openDeskPuzzle(host.showId, puzzleNumber(textOf(form, 'puzzle')));
  const answerId = puzzleNumber(textOf(form, 'answer'));
  const shown = opened === null ? null : await showMark({ puzzleId: opened.record.id, answerId, locale });
  const outcome = shown?.outcomes.find((one) => one === textOf(form, 'outcome'));
  if (opened === null || shown === null || outcome === undefined) {
    return problemState(say(locale, 'desk.settle-unknown-answer'), form);
  }
  const points = textOf(form, 'points').trim();
  const overruled = await overruleMark({
    answerId,
    outcome,
    points: /^\d{1,2}$/.test(points) ? Number(points) : null,
    why: textOf(form, 'why').slice(0, 300),
    memberId: host.id,
  });
  if (!overruled.ok) {
    const { reason } = overruled;
    return problemState(
      reason.code === 'points'
        ? say(locale, 'desk.settle-points', { least: reason.least, most: reason.most })
        : say(locale, `desk.settle-${reason.code}`),
      form,
    );
  }
  revalidatePath(`/desk/puzzles/${opened.record.id}/answers/${answerId}`);
  return noteState(say(locale, 'desk.overruled-done'));
}
