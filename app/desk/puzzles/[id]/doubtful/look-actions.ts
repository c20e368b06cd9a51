'use server';

import { redirect } from 'next/navigation';
import { reopenSecondLook } from '#lib/usecases/answers/reopen-second-look.ts';
import { type SettleLookReason, settleSecondLook } from '#lib/usecases/answers/settle-second-look.ts';
import { showLook } from '#lib/usecases/answers/show-look.ts';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { requireDoer } from '../../../../_auth/require-host.ts';
import { puzzleNumber } from '../../../_parts/find-puzzle.ts';
import { type FormState, problemState, textOf } from '../../../_parts/form-state.ts';

/** Settles the second look that was shown, by the button or key that was pressed. */
export async function settleLookAction(_before: FormState, form: FormData): Promise<FormState> {
  const host = await requireDoer('settle-doubtful');
  const { locale } = host;
  const opened = await openDeskPuzzle(host.showId, puzzleNumber(textOf(form, 'puzzle')));
  if (opened === null) return problemState(say(locale, 'desk.refused-unknown-puzzle'), form);
  const puzzleId = opened.record.id;
  const answerId = puzzleNumber(textOf(form, 'answer'));
  const question = await showLook({ puzzleId, answerId, locale });
  if (question === null) return problemState(say(locale, 'desk.settle-unknown-look'), form);
  const pressed = textOf(form, 'settle');
  const choice = question.choices.find((one) => one.outcome === pressed);
  // Sent without a button, and a mark that was changed meanwhile: the host looks again.
  const isStale = String(question.shown.mark?.id) !== textOf(form, 'mark');
  if ((choice === undefined && pressed !== 'stands') || isStale)
    return problemState(say(locale, 'desk.look-pick'), form);
  const settled = await settleSecondLook({
    puzzleId,
    answerId,
    outcome: choice?.outcome ?? null,
    points: null,
    reply: textOf(form, 'reply'),
    why: say(locale, 'desk.look-why'),
    memberId: host.id,
  });
  if (!settled.ok) return problemState(sayReason(settled.reason, locale), form);
  redirect(`/desk/puzzles/${puzzleId}/doubtful?looked=${answerId}`);
}

/** Takes the last word on a second look back. */
export async function reopenLookAction(_before: FormState, form: FormData): Promise<FormState> {
  const host = await requireDoer('settle-doubtful');
  const opened = await openDeskPuzzle(host.showId, puzzleNumber(textOf(form, 'puzzle')));
  if (opened === null) return problemState(say(host.locale, 'desk.refused-unknown-puzzle'), form);
  const puzzleId = opened.record.id;
  const answerId = puzzleNumber(textOf(form, 'answer'));
  const reopened = await reopenSecondLook({ puzzleId, answerId, memberId: host.id });
  if (!reopened.ok) return problemState(say(host.locale, 'desk.settle-nothing-to-undo'), form);
  redirect(`/desk/puzzles/${puzzleId}/doubtful?group=${encodeURIComponent(`look ${answerId}`)}`);
}

function sayReason(reason: SettleLookReason, locale: Locale): string {
  switch (reason.code) {
    case 'points':
      return say(locale, 'desk.settle-points', { least: reason.least, most: reason.most });
    case 'too-long':
      return say(locale, 'desk.settle-too-long', { length: reason.length, most: reason.most });
    default:
      return say(locale, `desk.settle-${reason.code}`);
  }
}
