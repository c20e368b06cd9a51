import type { ReactElement } from 'react';
import type { PublicCorrection } from '#lib/puzzle/correction.ts';
import type { PublicPuzzle } from '#lib/puzzle/public-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { ZonedTime } from './closing-line.tsx';

/** The correction notices of a puzzle, newest first; nothing where there are none. */
export function Corrections({
  puzzle,
  locale,
}: {
  puzzle: Pick<PublicPuzzle, 'corrections' | 'zone'>;
  locale: Locale;
}): ReactElement | null {
  const { corrections, zone } = puzzle;
  if (corrections.length === 0) return null;
  return (
    <section className="corrections" aria-labelledby="corrections">
      <h2 className="label red" id="corrections">
        {say(locale, 'pages.corrections', { count: corrections.length })}
      </h2>
      {corrections.map((one) => (
        <div className="correction" key={one.at.toISOString()}>
          <p className="quiet">
            <ZonedTime moment={one.at} zone={zone} locale={locale} />
          </p>
          <p>
            <WhatChanged correction={one} zone={zone} locale={locale} />
          </p>
          {one.note === '' ? null : (
            <p className="correction-note">
              <bdi>{one.note}</bdi>
            </p>
          )}
        </div>
      ))}
    </section>
  );
}

interface NoticeProps {
  readonly correction: PublicCorrection;
  readonly zone: string;
  readonly locale: Locale;
}

function WhatChanged({ correction, zone, locale }: NoticeProps): ReactElement {
  switch (correction.kind) {
    case 'void':
      return <>{say(locale, 'pages.correction-void')}</>;
    case 'extended':
      return <MovedClose correction={correction} zone={zone} locale={locale} />;
    case 'amended':
      return <>{amendedSentences(correction.changed, locale).join(' ')}</>;
  }
}

function MovedClose({ correction: { from, to }, zone, locale }: NoticeProps): ReactElement | null {
  if (from === null || to === null) return null;
  return (
    <>
      {say(locale, 'pages.close-was')} <ZonedTime moment={from} zone={zone} locale={locale} />,{' '}
      {say(locale, 'pages.close-is')} <ZonedTime moment={to} zone={zone} locale={locale} />.
    </>
  );
}

// How answers are marked is told where there is something that a sender can have seen.
function amendedSentences(changed: PublicCorrection['changed'], locale: Locale): string[] {
  if (changed.length === 0) return [say(locale, 'pages.corrected-nothing-shown')];
  const sentences = changed.map((change) => say(locale, `pages.corrected-${change}`));
  if (changed.some((change) => change !== 'keys')) sentences.push(say(locale, 'pages.corrected-marking'));
  return sentences;
}
