import type { ReactElement } from 'react';
import { offsetMinutes } from '#lib/kit/zoned-time.ts';
import type { PublicPuzzle } from '#lib/puzzle/public-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { sayMoment, sayTimeLeft } from './say-times.ts';

/** "Closes Friday 27 November, 18:00 UTC+1 · 2 days left"; after the close it says so. */
export function ClosingLine(input: { puzzle: PublicPuzzle; now: Date; locale: Locale }): ReactElement {
  const { puzzle, now, locale } = input;
  const isOpen = puzzle.state === 'open';
  return (
    <p className="closing">
      <span>
        {say(locale, isOpen ? 'pages.closes' : 'pages.closed-at')}{' '}
        <ZonedTime moment={puzzle.closesAt} zone={puzzle.zone} locale={locale} />
      </span>
      {isOpen ? <span className="red">{sayTimeLeft(now, puzzle.closesAt, locale)}</span> : null}
    </p>
  );
}

/** A moment in the show's zone; the board module adds the viewer's own time where it differs. */
export function ZonedTime(input: { moment: Date; zone: string; locale: Locale }): ReactElement {
  const { moment, zone, locale } = input;
  return (
    <time
      dateTime={moment.toISOString()}
      data-offset={offsetMinutes(moment, zone)}
      data-own={say(locale, 'pages.own-time', { time: '{time}' })}
    >
      {sayMoment(moment, zone, locale)}
    </time>
  );
}
