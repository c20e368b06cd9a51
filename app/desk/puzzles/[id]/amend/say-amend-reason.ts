import type { AmendReason } from '#lib/usecases/puzzles/propose-amendment.ts';
import type { InForceReason } from '#lib/usecases/puzzles/put-amendment-in-force.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { sayDeedReason } from '../../../_parts/say-deed-reason.ts';
import { sayTypedReason } from '../../new/say-reasons.ts';

/** Why a correction was not begun, and what was expected. */
export function sayAmendReason(reason: AmendReason, locale: Locale): string {
  switch (reason.code) {
    case 'note-empty':
    case 'amendment-open':
    case 'nothing-changed':
      return say(locale, `desk.refused-${reason.code}`);
    case 'note-too-long':
      return say(locale, 'desk.refused-note-too-long', { length: reason.length, most: reason.most });
    case 'wrong-state':
      return sayDeedReason(reason, locale);
    default:
      return sayTypedReason(reason, locale);
  }
}

/** Why a correction did not take force. */
export function sayInForceReason(reason: InForceReason, locale: Locale): string {
  switch (reason.code) {
    case 'no-amendment':
      return say(locale, 'desk.refused-no-amendment');
    case 'claim-false':
      return say(locale, 'desk.amend-claim-false');
    default:
      return sayDeedReason(reason, locale);
  }
}
