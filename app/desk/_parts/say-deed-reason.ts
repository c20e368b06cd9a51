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
