import type { NoteReason } from '#lib/usecases/puzzles/correction-note.ts';
import type { ExtendReason } from '#lib/usecases/puzzles/extend-puzzle.ts';
import type { PublishReason } from '#lib/usecases/puzzles/publish-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';

/** Why a deed on a puzzle was refused, and what would help. */
export function sayDeedReason(reason: PublishReason, locale: Locale): string {
  switch (reason.code) {
    case 'wrong-state':
      return say(locale, 'desk.refused-wrong-state', { state: say(locale, `desk.state-${reason.state}`) });
    case 'published-line-fails':
      return say(locale, 'desk.refused-published-line-fails', { lines: reason.lines });
    default:
      return say(locale, `desk.refused-${reason.code}`);
  }
}

/** Why a correction was refused (rule A6). */
export function sayCorrectionReason(reason: ExtendReason | NoteReason, locale: Locale): string {
  switch (reason.code) {
    case 'note-too-long':
      return say(locale, 'desk.refused-note-too-long', { length: reason.length, most: reason.most });
    case 'note-empty':
    case 'close-unchanged':
      return say(locale, `desk.refused-${reason.code}`);
    case 'zone':
      return say(locale, 'desk.wrong-zone');
    case 'time':
    case 'time-skipped':
      return say(locale, `desk.wrong-${reason.code}`, { field: reason.field, found: reason.found });
    default:
      return sayDeedReason(reason, locale);
  }
}
