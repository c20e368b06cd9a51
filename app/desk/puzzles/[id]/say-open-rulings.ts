import type { OpenRuling } from '#lib/usecases/puzzles/open-rulings.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { movesText } from '#lib/words/move-text.ts';

const MOST_NAMED = 5;

/** "1 Rh1 Bd7 2 Qb1": an unclear move with the way to its position. */
export function openMoveText({ line, fen }: OpenRuling, locale: Locale): string {
  return movesText(fen, line, { letters: locale });
}

/** Why the reveal stopped: the moves that are unclear and were not agreed to. */
export function sayOpenRulings(open: readonly OpenRuling[], locale: Locale): string {
  const named = open.slice(0, MOST_NAMED).map((one) =>
    say(locale, 'desk.reveal-open-move', {
      move: openMoveText(one, locale),
      count: one.answers,
    }),
  );
  return say(locale, 'desk.refused-rulings-open', {
    count: open.length,
    moves: open.length > MOST_NAMED ? `${named.join('; ')} …` : named.join('; '),
  });
}
