'use server';

import { redirect } from 'next/navigation';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { cancelAmendment, proposeAmendment } from '#lib/usecases/puzzles/propose-amendment.ts';
import { putAmendmentInForce } from '#lib/usecases/puzzles/put-amendment-in-force.ts';
import { say } from '#lib/words/format.ts';
import { requireDoer } from '../../../../_auth/require-host.ts';
import { taskHeadline } from '../../../../_ui/puzzle-heads.ts';
import { puzzleNumber } from '../../../_parts/find-puzzle.ts';
import { type FormState, problemState, textOf } from '../../../_parts/form-state.ts';
import type { PuzzleFormState } from '../../new/puzzle-form-state.ts';
import { lookAt, readPosition, taskOf, termsOf } from '../../new/read-terms.ts';
import { sayTypedReason } from '../../new/say-reasons.ts';
import { sayAmendReason, sayInForceReason } from './say-amend-reason.ts';

/** Looks at what was typed, or has it verified, by the button that was pressed. */
export async function proposeAction(_before: PuzzleFormState, form: FormData): Promise<PuzzleFormState> {
  const { id, showId, locale } = await requireDoer('amend-puzzle');
  const opened = await openDeskPuzzle(showId, puzzleNumber(textOf(form, 'puzzle')));
  if (opened === null)
    return { ...problemState(say(locale, 'desk.refused-unknown-puzzle'), form), look: null };
  const read = readPosition(form);
  if (!read.ok) return { ...problemState(sayTypedReason(read.reason, locale), form), look: null };
  const look = lookAt(read.value, locale);
  if (textOf(form, 'deed') !== 'save') return { ...problemState('', form), problem: null, look };
  const { fen } = read.value;
  const task = taskOf(form);
  const headline = taskHeadline({ turn: fen.split(' ')[1] === 'b' ? 'b' : 'w', task }, locale);
  const asked = await proposeAmendment({
    puzzleId: opened.record.id,
    memberId: id,
    terms: { ...termsOf(form, fen), ...boundsOf(form) },
    title: textOf(form, 'title').trim() || headline,
    howFar: textOf(form, 'howFar'),
    note: textOf(form, 'note'),
  });
  if (!asked.ok) return { ...problemState(sayAmendReason(asked.reason, locale), form), look };
  redirect(`/desk/puzzles/${opened.record.id}/amend`);
}

// An empty field is no number: it is refused in words, not taken as 0.
function boundsOf(form: FormData) {
  const bound = (name: string): number => Number(textOf(form, name).trim() || Number.NaN);
  return {
    winBound: bound('winBound'),
    slipBound: bound('slipBound'),
    drawBound: bound('drawBound'),
    drawSlipBound: bound('drawSlipBound'),
  };
}

export async function putInForceAction(_before: FormState, form: FormData): Promise<FormState> {
  const { id, showId, locale } = await requireDoer('amend-puzzle');
  const opened = await openDeskPuzzle(showId, puzzleNumber(textOf(form, 'puzzle')));
  if (opened === null) return problemState(say(locale, 'desk.refused-unknown-puzzle'), form);
  const puzzleId = opened.record.id;
  const overrideReason = textOf(form, 'reason').slice(0, 300).trim() || null;
  const put = await putAmendmentInForce({ puzzleId, memberId: id, overrideReason });
  if (!put.ok) return problemState(sayInForceReason(put.reason, locale), form);
  redirect(`/desk/puzzles/${puzzleId}`);
}

export async function cancelAction(_before: FormState, form: FormData): Promise<FormState> {
  const { id, showId, locale } = await requireDoer('amend-puzzle');
  const opened = await openDeskPuzzle(showId, puzzleNumber(textOf(form, 'puzzle')));
  if (opened === null) return problemState(say(locale, 'desk.refused-unknown-puzzle'), form);
  const puzzleId = opened.record.id;
  const cancelled = await cancelAmendment({ puzzleId, memberId: id });
  if (!cancelled.ok) return problemState(say(locale, 'desk.refused-no-amendment'), form);
  redirect(`/desk/puzzles/${puzzleId}/amend`);
}
