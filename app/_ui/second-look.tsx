import type { ReactElement } from 'react';
import type { ShownLook } from '#lib/usecases/answers/show-receipt.ts';
import { say } from '#lib/words/format.ts';
import type { Viewer } from '../_http/viewer.ts';
import { ZonedTime } from './closing-line.tsx';

/** What was typed and refused, and why. */
export interface RefusedLook {
  readonly problem: string;
  readonly words: string;
}

interface Input {
  readonly look: ShownLook | null;
  readonly token: string;
  readonly zone: string;
  readonly viewer: Viewer;
  readonly refused: RefusedLook | null;
}

/** The second look of a receipt: the form to ask for one, or what has become of it (rule A2). */
export function SecondLook({ look, token, zone, viewer, refused }: Input): ReactElement {
  const { locale } = viewer;
  return (
    <section className="second-look" id="second-look" aria-labelledby="second-look-title">
      {look === null ? (
        <AskForm token={token} viewer={viewer} refused={refused} />
      ) : (
        <div className="stack">
          <h2 className="label" id="second-look-title">
            {say(locale, 'pages.look')}
          </h2>
          {refused === null ? null : (
            <p className="problem" role="alert">
              {refused.problem}
            </p>
          )}
          <p>
            {say(locale, 'pages.look-asked')} <ZonedTime moment={look.askedAt} zone={zone} locale={locale} />.
          </p>
          <RemarkWords words={look.words} />
          {look.result === null || look.settledAt === null ? (
            <p>{say(locale, 'pages.look-waits')}</p>
          ) : (
            <>
              <p className="lead">{say(locale, `pages.look-${look.result}`)}</p>
              {look.reply === null || look.reply === '' ? null : (
                <>
                  <h3 className="label">{say(locale, 'pages.look-reply')}</h3>
                  <RemarkWords words={look.reply} />
                </>
              )}
              <p className="quiet">
                {say(locale, 'pages.look-settled')}{' '}
                <ZonedTime moment={look.settledAt} zone={zone} locale={locale} />.
              </p>
            </>
          )}
        </div>
      )}
    </section>
  );
}

function AskForm({ token, viewer, refused }: Omit<Input, 'look' | 'zone'>): ReactElement {
  const { locale } = viewer;
  return (
    <details open={refused !== null}>
      <summary id="second-look-title">{say(locale, 'pages.look-ask')}</summary>
      <form method="post" action={`/r/${token}/second-look`} className="answer-form stack">
        {refused === null ? null : (
          <p className="problem" role="alert" id="look-problem">
            {refused.problem}
          </p>
        )}
        <div>
          <label htmlFor="look-words">{say(locale, 'pages.look-words')}</label>
          <textarea
            id="look-words"
            name="words"
            maxLength={500}
            dir="auto"
            aria-describedby={refused === null ? 'look-hint' : 'look-hint look-problem'}
            aria-invalid={refused === null ? undefined : true}
            defaultValue={refused?.words ?? ''}
          />
          <p className="hint" id="look-hint">
            {say(locale, 'pages.look-hint')}
          </p>
        </div>
        {viewer.picked === null ? null : <input type="hidden" name="lang" value={viewer.picked} />}
        <button type="submit" className="button-plain">
          {say(locale, 'pages.look-send')}
        </button>
      </form>
    </details>
  );
}

/** Words of a person about a mark, exactly as kept: an own block, so that no direction sign reaches beyond it. */
export function RemarkWords({ words }: { words: string }): ReactElement | null {
  if (words === '') return null;
  return (
    <blockquote className="quote remark from-outside" dir="auto">
      {words}
    </blockquote>
  );
}
