'use server';

import { revalidatePath } from 'next/cache';
import { parseFen } from '#lib/rules/parse-fen.ts';
import { importComments } from '#lib/usecases/answers/import-comments.ts';
import { type CommentsPreview, previewComments } from '#lib/usecases/answers/preview-comments.ts';
import { openDeskPuzzle } from '#lib/usecases/puzzles/open-desk-puzzle.ts';
import { momentOf } from '#lib/usecases/puzzles/set-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { requireDoer } from '../../../../_auth/require-host.ts';
import { lettersOf } from '../../../../_ui/piece-letters.ts';
import { plainLine, printLine } from '../../../../_ui/read-line.ts';
import { puzzleNumber } from '../../../_parts/find-puzzle.ts';
import { problemState, textOf } from '../../../_parts/form-state.ts';
import type { CommentsState } from './comments-form.tsx';
import { columnsOf, type Held, holdUpload } from './hold-upload.ts';
import type { ShownPreview } from './preview-table.tsx';
import { sayRecordReason, sayUploadReason } from './say-upload-reason.ts';

const TEXT_SHOWN = 280;

/** Looks at an upload, or stores it, by the button that was pressed. */
export async function importAction(_before: CommentsState, form: FormData): Promise<CommentsState> {
  const host = await requireDoer('import-comments');
  const { locale } = host;
  const opened = await openDeskPuzzle(host.showId, puzzleNumber(textOf(form, 'puzzle')));
  const held = await holdUpload(form);
  const shown: CommentsState = {
    ...problemState('', form),
    problem: null,
    held: null,
    heads: [],
    columns: {},
    preview: null,
  };
  if (opened === null) return { ...shown, problem: say(locale, 'desk.refused-unknown-puzzle') };
  if (held === 'too-large') return { ...shown, problem: say(locale, 'desk.comments-wrong-file-too-large') };
  if (held === null) return { ...shown, problem: say(locale, 'desk.comments-wrong-paste-empty') };
  const { zone } = opened.record;
  const exportedAt = momentOf(textOf(form, 'exportedAt'), 'opensAt', zone);
  const isPaste = held.format === 'pasted';
  const kept =
    isPaste && textOf(form, 'deed') !== 'store'
      ? { ...shown, held: null }
      : { ...shown, held: onlyText(held) };
  if (!exportedAt.ok) return { ...kept, problem: say(locale, 'desk.comments-wrong-exported') };
  const columns = columnsOf(form);
  const upload = { ...held, columns, puzzleId: opened.record.id, sourceName: textOf(form, 'source').trim() };
  const read = await previewComments({ ...upload, frame: { exportedAt: exportedAt.value, zone } });
  if (!read.ok) {
    const heads = read.reason.code === 'no-text-column' ? read.reason.heads : [];
    return { ...kept, heads, problem: sayUploadReason(read.reason, locale) };
  }
  if (textOf(form, 'deed') === 'store') {
    const timeWord = timeWordOf(textOf(form, 'timeWord'));
    const stored = await importComments({
      ...upload,
      showId: host.showId,
      memberId: host.id,
      timeWord,
      exportedAt: exportedAt.value,
      zone,
    });
    if (!stored.ok) return { ...kept, problem: sayUploadReason(stored.reason, locale) };
    revalidatePath(`/desk/puzzles/${opened.record.id}/comments`);
    return { ...shown, fields: {}, note: say(locale, 'desk.comments-stored') };
  }
  return {
    ...kept,
    held: isPaste ? null : onlyText(held),
    heads: read.value.heads,
    columns: { ...(read.value.columns ?? {}) },
    preview: showPreview(read.value, opened.record.terms.fen, { zone, locale }),
  };
}

function onlyText({ text, format, fileName }: Held): NonNullable<CommentsState['held']> {
  return { text, format, fileName: fileName ?? '' };
}

function timeWordOf(text: string): 'before' | 'after' | 'unknown' {
  return text === 'before' || text === 'after' ? text : 'unknown';
}

function showPreview(
  read: CommentsPreview,
  fen: string,
  { zone, locale }: { zone: string; locale: Locale },
): ShownPreview {
  const position = parseFen(fen);
  const letters = lettersOf(locale);
  const time = new Intl.DateTimeFormat(locale === 'de' ? 'de-DE' : 'en-GB', {
    dateStyle: 'short',
    timeStyle: 'short',
    timeZone: zone,
  });
  const rows = read.rows.map((row) => {
    const line =
      row.line === null || !position.ok ? '' : plainLine(printLine(position.value, row.line, letters));
    const several =
      row.readings > 1 ? ` ${say(locale, 'desk.comments-readings', { count: row.readings })}` : '';
    return {
      key: String(row.row),
      author: row.author ?? say(locale, 'desk.comments-no-author'),
      text: row.text.length > TEXT_SHOWN ? `${row.text.slice(0, TEXT_SHOWN)}…` : row.text,
      read: line === '' ? say(locale, `desk.comments-kind-${row.kind}`) : line + several,
      time: row.at === null ? say(locale, 'desk.comments-no-time') : time.formatRange(row.at.from, row.at.to),
      isKnown: row.isKnown,
    };
  });
  const summary = say(locale, 'desk.comments-summary', {
    comments: read.comments,
    shown: rows.length,
    withoutTime: read.withoutTime,
    refused: read.refusedCount,
  });
  return { summary, rows, refused: read.refused.map((reason) => sayRecordReason(reason, locale)) };
}
