'use server';

import { revalidatePath } from 'next/cache';
import {
  agreeToRegrade,
  askRegrade,
  cancelRegrade,
  type DecideReason,
} from '#lib/usecases/answers/decide-regrade.ts';
import type { Host } from '#lib/usecases/people/admit-member.ts';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { requireDoer } from '../../../../_auth/require-host.ts';
import { puzzleNumber } from '../../../_parts/find-puzzle.ts';
import { type FormState, noteState, problemState, textOf } from '../../../_parts/form-state.ts';

/** The owner who does it, and the puzzle that the form names if it is the owner's; 0 where it is not. */
async function doer(form: FormData): Promise<{ host: Host; puzzleId: number }> {
  const host = await requireDoer('regrade-puzzle');
  const opened = await openDeskPuzzle(host.showId, puzzleNumber(textOf(form, 'puzzle')));
  return { host, puzzleId: opened?.record.id ?? 0 };
}

/** Asks to have everybody marked again. */
export async function askAction(_before: FormState, form: FormData): Promise<FormState> {
  const { host, puzzleId } = await doer(form);
  const { locale, id: memberId } = host;
  const asked = await askRegrade({ puzzleId, memberId, reason: textOf(form, 'reason').slice(0, 300) });
  if (!asked.ok) {
    const { code } = asked.reason;
    const key =
      code === 'unknown-puzzle'
        ? 'desk.refused-unknown-puzzle'
        : code === 'reason-empty'
          ? 'desk.regrade-refused-reason-empty'
          : (`desk.regrade-${code}` as const);
    return problemState(say(locale, key), form);
  }
  renew(puzzleId);
  const { answers, isPreviewed } = asked.value;
  return noteState(
    say(locale, isPreviewed ? 'desk.regrade-asked-first' : 'desk.regrade-asked-now', { answers }),
  );
}

/** Says yes to what was shown, and one by one to what was ticked. */
export async function applyAction(_before: FormState, form: FormData): Promise<FormState> {
  const { host, puzzleId } = await doer(form);
  const agreed = form.getAll('agreed').map((one) => puzzleNumber(String(one)));
  const said = await agreeToRegrade({
    puzzleId,
    memberId: host.id,
    regradeId: puzzleNumber(textOf(form, 'regrade')),
    round: puzzleNumber(textOf(form, 'round')),
    agreed,
  });
  renew(puzzleId);
  return said.ok
    ? noteState(say(host.locale, 'desk.regrade-agreed-done'))
    : problemState(sayReason(said.reason, host.locale), form);
}

/** Drops it. */
export async function cancelAction(_before: FormState, form: FormData): Promise<FormState> {
  const { host, puzzleId } = await doer(form);
  const regradeId = puzzleNumber(textOf(form, 'regrade'));
  const dropped = await cancelRegrade({ puzzleId, memberId: host.id, regradeId });
  renew(puzzleId);
  return dropped.ok
    ? noteState(say(host.locale, 'desk.regrade-dropped'))
    : problemState(sayReason(dropped.reason, host.locale), form);
}

function renew(puzzleId: number): void {
  revalidatePath(`/desk/puzzles/${puzzleId}/regrade`);
}

function sayReason(reason: DecideReason, locale: Locale): string {
  return reason.code === 'not-in-preview'
    ? say(locale, 'desk.regrade-refused-not-in-preview', { answer: reason.answerId })
    : say(locale, `desk.regrade-refused-${reason.code}`);
}
