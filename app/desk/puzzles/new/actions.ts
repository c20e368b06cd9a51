'use server';

import { redirect } from 'next/navigation';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { setPuzzle, type TypedPuzzle } from '#lib/usecases/puzzles/set-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { requireDoer } from '../../../_auth/require-host.ts';
import { taskHeadline } from '../../../_ui/puzzle-heads.ts';
import { puzzleNumber } from '../../_parts/find-puzzle.ts';
import { problemState, textOf } from '../../_parts/form-state.ts';
import type { PuzzleFormState } from './puzzle-form-state.ts';
import { lookAt, readPosition, taskOf, termsOf } from './read-terms.ts';
import { sayTypedReason } from './say-reasons.ts';

/** Looks at what was pasted, or saves it, by the button that was pressed. */
export async function setPuzzleAction(_before: PuzzleFormState, form: FormData): Promise<PuzzleFormState> {
  const { id, showId, locale } = await requireDoer('create-puzzle');
  const changed = textOf(form, 'puzzle');
  const draft = changed === '' ? null : await openDeskPuzzle(showId, puzzleNumber(changed));
  if (changed !== '' && draft === null)
    return { ...problemState(say(locale, 'desk.refused-unknown-puzzle'), form), look: null };
  const read = readPosition(form);
  if (!read.ok) return { ...problemState(sayTypedReason(read.reason, locale), form), look: null };
  const look = lookAt(read.value, locale);
  const typed = problemState('', form);
  if (textOf(form, 'deed') !== 'save') return { ...typed, problem: null, look };
  const task = taskOf(form);
  const set = await setPuzzle({
    showId,
    memberId: id,
    episodeNumber: Number(textOf(form, 'episodeNumber')),
    episodeTitle: textOf(form, 'episodeTitle'),
    title: textOf(form, 'title').trim() || titleOf(read.value.fen, task, locale),
    terms: termsOf(form, read.value.fen),
    opensAt: textOf(form, 'opensAt'),
    closesAt: textOf(form, 'closesAt'),
    zone: textOf(form, 'zone'),
    howFar: textOf(form, 'howFar'),
    countsFirst: form.has('countsFirst'),
    ...(draft === null ? {} : { puzzleId: draft.record.id }),
  });
  if (!set.ok) return { ...problemState(sayTypedReason(set.reason, locale), form), look };
  redirect(`/desk/puzzles/${set.value}`);
}

function titleOf(fen: string, task: TypedPuzzle['terms']['task'], locale: Locale): string {
  return taskHeadline({ turn: fen.split(' ')[1] === 'b' ? 'b' : 'w', task }, locale);
}
