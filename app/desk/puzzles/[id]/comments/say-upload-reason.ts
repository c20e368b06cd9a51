import type { ImportReason } from '#lib/usecases/answers/import-comments.ts';
import type { CommentsPreview } from '#lib/usecases/answers/preview-comments.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';

/** Why an upload is not taken, with row and what was expected. */
export function sayUploadReason(reason: ImportReason, locale: Locale): string {
  switch (reason.code) {
    case 'no-text-column':
      return say(locale, 'desk.comments-wrong-no-text-column', { heads: reason.heads.join(', ') });
    case 'doubled-column':
      return say(locale, 'desk.comments-wrong-doubled-column', { head: reason.head });
    case 'column-out-of-range':
      return say(locale, 'desk.comments-wrong-column-out-of-range', { columns: reason.columns });
    case 'paste-too-long':
    case 'too-many-comments':
      return say(locale, `desk.comments-wrong-${reason.code}`, { most: reason.most });
    case 'file-too-long':
      return say(locale, 'desk.comments-wrong-file-too-large');
    case 'row-too-long':
      return say(locale, 'desk.comments-wrong-row-too-long', { row: reason.row, most: reason.mostBytes });
    case 'too-many-columns':
      return say(locale, 'desk.comments-wrong-too-many-columns', { row: reason.row, most: reason.most });
    case 'not-text':
    case 'open-quote':
    case 'bad-quote':
    case 'not-json':
    case 'not-an-object':
      return say(locale, `desk.comments-wrong-${reason.code}`, { row: reason.row });
    default:
      return say(locale, `desk.comments-wrong-${reason.code}`);
  }
}

/** Why one row is no comment. */
export function sayRecordReason(reason: CommentsPreview['refused'][number], locale: Locale): string {
  switch (reason.code) {
    case 'bad-time':
      return say(locale, 'desk.comments-row-bad-time', { row: reason.row, found: reason.found });
    case 'too-long':
      return say(locale, 'desk.comments-row-too-long', { row: reason.row, most: reason.most });
    default:
      return say(locale, `desk.comments-row-${reason.code}`, { row: reason.row });
  }
}
