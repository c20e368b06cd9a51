import { describePosition } from '#lib/pictures/describe-position.ts';
import { drawDiagram } from '#lib/pictures/draw-diagram.ts';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { type PuzzlePreview, previewPuzzle } from '#lib/usecases/puzzles/preview-puzzle.ts';
import { puzzleTerms, type TypedPuzzle } from '#lib/usecases/puzzles/set-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { lettersOf } from '../../../_ui/piece-letters.ts';
import { plainLine, printLine } from '../../../_ui/read-line.ts';
import { textOf } from '../../_parts/form-state.ts';
import type { PuzzleFormState } from './puzzle-form-state.ts';

type Terms = TypedPuzzle['terms'];

/** The published lines as typed, one a row. */
export function linesOf(form: FormData): string[] {
  return rowsOf(textOf(form, 'published'));
}

function rowsOf(text: string): string[] {
  return text
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
}

/** Position and lines as they are read. */
export function readPosition(form: FormData): ReturnType<typeof previewPuzzle> {
  const ply = textOf(form, 'ply');
  const position = textOf(form, 'position');
  return previewPuzzle({ position, ply: ply === '' ? null : Number(ply), published: linesOf(form) });
}

/** The task as picked. */
export function taskOf(form: FormData): Terms['task'] {
  const kind = textOf(form, 'task');
  if (kind === 'win' || kind === 'draw') return { kind };
  return { kind: 'mate', moves: Number(textOf(form, 'moves')) };
}

/** The terms as typed, for a position that was read. */
export function termsOf(form: FormData, fen: string): Terms {
  const pinned = textOf(form, 'solverMoves').trim();
  return puzzleTerms({
    task: taskOf(form),
    published: linesOf(form),
    fen,
    scheme: textOf(form, 'scheme') === 'key-move' ? 'key-move' : 'full-line',
    anyDefence: form.has('anyDefence'),
    mateWritten: form.has('mateWritten'),
    isStrict: form.has('isStrict'),
    solverMoves: /^\d{1,3}$/.test(pinned) && Number(pinned) > 0 ? Number(pinned) : null,
  });
}

/** What stands in the form already, looked at before anybody presses a button; null where it cannot be read. */
export function firstLook(typed: Readonly<Record<string, string>>, locale: Locale): PuzzleFormState['look'] {
  const { position = '', published = '' } = typed;
  const read = previewPuzzle({ position, ply: null, published: rowsOf(published) });
  return read.ok ? lookAt(read.value, locale) : null;
}

/** What was read, drawn and printed for the form. */
export function lookAt(preview: PuzzlePreview, locale: Locale): NonNullable<PuzzleFormState['look']> {
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
