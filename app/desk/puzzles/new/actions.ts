'use server';

import { redirect } from 'next/navigation';

import { describePosition } from '#lib/pictures/describe-position.ts';
import { drawDiagram } from '#lib/pictures/draw-diagram.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { type PuzzlePreview, previewPuzzle } from '#lib/usecases/puzzles/preview-puzzle.ts';
import { puzzleTerms, setPuzzle, type TypedPuzzle } from '#lib/usecases/puzzles/set-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { requireDoer } from '../../../_auth/require-host.ts';
import { lettersOf } from '../../../_ui/piece-letters.ts';
import { taskHeadline } from '../../../_ui/puzzle-heads.ts';
import { plainLine, printLine } from '../../../_ui/read-line.ts';
import { puzzleNumber } from '../../_parts/find-puzzle.ts';
import { problemState, textOf } from '../../_parts/form-state.ts';
import type { PuzzleFormState } from './new-puzzle-form.tsx';
import { sayTypedReason } from './say-reasons.ts';

type Terms = TypedPuzzle['terms'];

/** Looks at what was pasted, or saves it, by the button that was pressed. */
export async function setPuzzleAction(_before: PuzzleFormState, form: FormData): Promise<PuzzleFormState> {
  const { id, showId, locale } = await requireDoer('create-puzzle');
  const changed = textOf(form, 'puzzle');
  const draft = changed === '' ? null : await openDeskPuzzle(showId, puzzleNumber(changed));
  if (changed !== '' && draft === null)
    return { ...problemState(say(locale, 'desk.refused-unknown-puzzle'), form), look: null };
  const published = textOf(form, 'published')
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  const ply = textOf(form, 'ply');
  const position = textOf(form, 'position');
  const read = previewPuzzle({ position, ply: ply === '' ? null : Number(ply), published });
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
    terms: termsOf(form, read.value.fen, { task, published }),
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

function taskOf(form: FormData): Terms['task'] {
  const kind = textOf(form, 'task');
  if (kind === 'win' || kind === 'draw') return { kind };
  return { kind: 'mate', moves: Number(textOf(form, 'moves')) };
}

function termsOf(form: FormData, fen: string, set: Pick<Terms, 'task' | 'published'>): Terms {
  const pinned = textOf(form, 'solverMoves').trim();
  return puzzleTerms({
    ...set,
    fen,
    scheme: textOf(form, 'scheme') === 'key-move' ? 'key-move' : 'full-line',
    anyDefence: form.has('anyDefence'),
    mateWritten: form.has('mateWritten'),
    isStrict: form.has('isStrict'),
    solverMoves: /^\d{1,3}$/.test(pinned) && Number(pinned) > 0 ? Number(pinned) : null,
  });
}

function titleOf(fen: string, task: Terms['task'], locale: Locale): string {
  return taskHeadline({ turn: fen.split(' ')[1] === 'b' ? 'b' : 'w', task }, locale);
}

function lookAt(preview: PuzzlePreview, locale: Locale): NonNullable<PuzzleFormState['look']> {
  const position = parseFen(preview.fen);
  if (!position.ok) throw new Error(`read and not a position: ${preview.fen}`);
  const side = say(locale, position.value.turn === 'w' ? 'desk.white-to-move' : 'desk.black-to-move');
  const lines = preview.lines.map((line) => {
    const readings = line.readings.map((one) => plainLine(printLine(position.value, one, lettersOf(locale))));
    const key =
      readings.length === 0
        ? 'none'
        : line.impossibleAt !== null
          ? 'impossible'
          : readings.length > 1
            ? 'several'
            : 'one';
    const read = readings.join(' / ');
    return {
      text: line.text,
      read: say(locale, `desk.line-read-${key}`, { read, ply: line.impossibleAt ?? 0 }),
    };
  });
  return {
    svg: drawDiagram({
      position: position.value,
      title: side,
      description: describePosition(position.value, locale),
      id: 'look',
    }),
    caption: side,
    plies: preview.plies.map(({ ply, label }) => ({ ply, label: label || say(locale, 'desk.ply-start') })),
    ply: preview.ply,
    lines,
  };
}
