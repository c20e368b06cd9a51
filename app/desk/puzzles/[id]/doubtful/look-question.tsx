import type { ReactElement } from 'react';
import { REMARK_CHARACTERS } from '#lib/kit/short-text.ts';
import type { LookQuestion as Asked } from '#lib/usecases/answers/show-look.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { outcomeLabel } from '#lib/words/outcome-label.ts';
import { LedgerTable } from '../../../../_ui/mark-view.tsx';
import { QuotedText } from '../../../../_ui/quoted-text.tsx';
import { sayMoment } from '../../../../_ui/say-times.ts';
import { RemarkWords } from '../../../../_ui/second-look.tsx';
import { unbroken } from '../../../../_ui/unbroken.ts';
import { KeyForm } from './key-form.tsx';
import { settleLookAction } from './look-actions.ts';
import { keyWords } from './question.tsx';

interface Input {
  readonly question: Asked;
  readonly puzzle: number;
  readonly zone: string;
  readonly locale: Locale;
}

/** One second look: the viewer's words beside text, reading, mark and explanation, and a key for each way to settle it. */
export function LookQuestion({ question, puzzle, zone, locale }: Input): ReactElement {
  const { shown, look } = question;
  const { answer, mark, ledger } = shown;
  const turn = shown.fen.split(' ')[1] === 'b' ? 'b' : 'w';
  return (
    <>
      <h1>{say(locale, 'desk.doubtful-title-look')}</h1>
      <p className="how-far">{say(locale, 'desk.doubtful-about-look')}</p>
      <p className="quiet asker">
        {say(locale, 'desk.doubtful-from', {
          name: answer.name ?? say(locale, 'desk.comments-no-author'),
          channel: say(locale, `desk.channel-${answer.channel}`),
          at: sayMoment(look.askedAt, zone, locale),
        })}
      </p>
      <h2 className="label">{say(locale, 'desk.look-says')}</h2>
      {look.words === '' ? <p>{say(locale, 'desk.look-no-words')}</p> : <RemarkWords words={look.words} />}
      <h2 className="label">{say(locale, 'desk.look-sent')}</h2>
      <QuotedText text={answer.text} line={mark?.reading ?? []} />
      <h2 className="label">{say(locale, 'desk.look-mark')}</h2>
      {mark === null ? null : (
        <p>
          <a href={`/desk/puzzles/${puzzle}/answers/${answer.id}`}>{outcomeLabel(labelled(mark), locale)}</a>.{' '}
          {say(locale, 'pages.points-of', { points: mark.points, most: shown.mostPoints })}{' '}
          {unbroken(shown.explanation ?? '')}
        </p>
      )}
      {ledger === null || ledger.rows.length === 0 ? null : (
        <LedgerTable ledger={ledger} locale={locale} turn={turn} />
      )}
      <KeyForm action={settleLookAction} words={keyWords(locale)}>
        <input type="hidden" name="puzzle" value={puzzle} />
        <input type="hidden" name="answer" value={answer.id} />
        <input type="hidden" name="mark" value={mark?.id ?? 0} />
        <div className="key-row">
          <label htmlFor="reply">
            <kbd>R</kbd> {say(locale, 'desk.look-reply')}
          </label>
          <textarea
            id="reply"
            name="reply"
            className="field"
            data-key="r"
            dir="auto"
            maxLength={REMARK_CHARACTERS}
            aria-describedby="reply-hint"
          />
        </div>
        <p className="hint" id="reply-hint">
          {say(locale, 'desk.look-reply-hint')}
        </p>
        <Choices question={question} locale={locale} />
      </KeyForm>
    </>
  );
}

/** What `outcomeLabel` needs of a stored mark. */
export function labelled({ outcome, atMove, reason }: NonNullable<Asked['shown']['mark']>) {
  return { outcome, atMove, isSlowerNotShown: reason.code === 'slower-not-shown' };
}

function Choices({ question, locale }: Pick<Input, 'question' | 'locale'>): ReactElement {
  const { mark } = question.shown;
  const rows = [
    { value: 'stands', words: say(locale, 'desk.look-stands-key'), points: mark?.points ?? 0 },
    ...question.choices.map(({ outcome, points }) => ({
      value: outcome,
      words: say(locale, `desk.outcome-${outcome}`),
      points,
    })),
  ];
  return (
    <table className="candidates">
      <thead>
        <tr>
          <td />
          <th scope="col">{say(locale, 'desk.doubtful-outcome')}</th>
          <th scope="col">{say(locale, 'desk.doubtful-points')}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ value, words, points }, place) => (
          <tr key={value}>
            <td>
              <button
                type="submit"
                name="settle"
                value={value}
                className="key-button"
                data-key={String(place + 1)}
                aria-label={`${place + 1}: ${words}`}
              >
                <kbd>{place + 1}</kbd>
              </button>
            </td>
            <th scope="row">{words}</th>
            <td className="figures">{points}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
