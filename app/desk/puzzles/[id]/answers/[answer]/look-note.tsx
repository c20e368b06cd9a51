import type { ReactElement } from 'react';
import type { DeskMark } from '#lib/usecases/answers/show-mark.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { sayMoment } from '../../../../../_ui/say-times.ts';
import { RemarkWords } from '../../../../../_ui/second-look.tsx';

interface Input {
  readonly shown: DeskMark;
  readonly puzzle: number;
  readonly zone: string;
  readonly locale: Locale;
}

/** The second look that the viewer asked for, and what has become of it (rule A2). */
export function LookNote({ shown, puzzle, zone, locale }: Input): ReactElement | null {
  const { look } = shown;
  if (look === null || shown.answer.withdrawnAt !== null) return null;
  return (
    <section className="stack">
      <h2>{say(locale, 'desk.look-on-mark')}</h2>
      {look.words === '' ? <p>{say(locale, 'desk.look-no-words')}</p> : <RemarkWords words={look.words} />}
      {look.settledAt === null || look.result === null ? (
        <p>
          {say(locale, 'desk.look-waits')}{' '}
          <a href={`/desk/puzzles/${puzzle}/doubtful?group=${encodeURIComponent(`look ${shown.answer.id}`)}`}>
            {say(locale, 'desk.look-to-list')}
          </a>
        </p>
      ) : (
        <p className="quiet">
          {say(locale, `desk.look-done-${look.result}`, {
            who: shown.lookBy ?? '–',
            at: sayMoment(look.settledAt, zone, locale),
          })}
        </p>
      )}
      {look.reply === null || look.reply === '' ? null : (
        <>
          <h3 className="label">{say(locale, 'desk.look-your-reply')}</h3>
          <RemarkWords words={look.reply} />
        </>
      )}
    </section>
  );
}
