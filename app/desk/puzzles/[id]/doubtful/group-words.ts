import { parseFen } from '#lib/rules/parse-fen.ts';
import { findUci } from '#lib/rules/uci.ts';
import type { WaitingGroup } from '#lib/usecases/answers/show-doubtful.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { shortMove } from '../../../../_ui/board/answer-line.ts';
import { lettersOf } from '../../../../_ui/piece-letters.ts';

/** What a group is about, in a line of the list. */
export function groupLabel(group: WaitingGroup, fen: string, locale: Locale): string {
  const subject = subjectWords(group, fen, locale);
  if (group.kind === 'look' && subject === '')
    return say(locale, 'desk.doubtful-label-look', { subject: say(locale, 'desk.comments-no-author') });
  return say(locale, `desk.doubtful-label-${group.kind}`, { subject });
}

/** The subject as it is read: a move of the first position by its short name, else as it stands. */
export function subjectWords({ kind, subject, doubt }: WaitingGroup, fen: string, locale: Locale): string {
  if (kind !== 'verdict') return subject;
  // The group's key carries the position the move belongs to; clocks do not matter for its name.
  const place = doubt.split(' ').slice(2, 6).join(' ');
  const position = parseFen(place === '' ? fen : place);
  const move = position.ok ? findUci(position.value, subject) : null;
  return position.ok && move !== null ? shortMove(position.value, move, lettersOf(locale)) : subject;
}
