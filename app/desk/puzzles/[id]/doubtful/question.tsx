import type { ReactElement } from 'react';
import { parseFen } from '#lib/rules/parse-fen.ts';
import type { Candidate, DoubtfulQuestion } from '#lib/usecases/answers/show-doubtful.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { outcomeLabel } from '#lib/words/outcome-label.ts';
import { lettersOf } from '../../../../_ui/piece-letters.ts';
import { LineText } from '../../../../_ui/printed-line.tsx';
import { QuotedText } from '../../../../_ui/quoted-text.tsx';
import { printLine } from '../../../../_ui/read-line.ts';
import { sayMoment } from '../../../../_ui/say-times.ts';
import { settleAction } from './actions.ts';
import { subjectWords } from './group-words.ts';
import { KeyForm } from './key-form.tsx';

interface Input {
  readonly question: DoubtfulQuestion;
  readonly puzzle: number;
  readonly zone: string;
  readonly fen: string;
  readonly locale: Locale;
}

/** One question: the text as it came, and one key for each way to take it. */
export function Question({ question, puzzle, zone, fen, locale }: Input): ReactElement {
  const { kind, answers } = question;
  const subject = subjectWords(question, fen, locale);
  return (
    <>
      <h1>{say(locale, `desk.doubtful-title-${kind}`, { subject })}</h1>
      <p className="how-far">{say(locale, `desk.doubtful-about-${kind}`, { count: answers, subject })}</p>
      <p className="quiet asker">
        {say(locale, 'desk.doubtful-from', {
          name: question.name ?? say(locale, 'desk.comments-no-author'),
          channel: say(locale, `desk.channel-${question.channel}`),
          at: sayMoment(question.at, zone, locale),
        })}
      </p>
      <QuotedText text={question.text} line={question.recognised} />
      <KeyForm action={settleAction} words={keyWords(locale)}>
        <input type="hidden" name="puzzle" value={puzzle} />
        <input type="hidden" name="doubt" value={question.doubt} />
        <input type="hidden" name="answer" value={question.answerId} />
        <table className="candidates">
          <thead>
            <tr>
              <td />
              <th scope="col">{say(locale, 'desk.doubtful-reading')}</th>
              <th scope="col">{say(locale, 'desk.doubtful-outcome')}</th>
              <th scope="col">{say(locale, 'desk.doubtful-points')}</th>
            </tr>
          </thead>
          <tbody>
            {question.candidates.map((one, place) => (
              <CandidateRow
                key={one.id}
                one={one}
                number={place + 1}
                fen={fen}
                subject={subject}
                isTurned={kind === 'turned'}
                locale={locale}
              />
            ))}
          </tbody>
        </table>
        <div className="key-row">
          <label htmlFor="correct">
            <kbd>C</kbd> {say(locale, 'desk.doubtful-correct')}
          </label>
          <input
            id="correct"
            name="correct"
            className="field"
            data-key="c"
            maxLength={300}
            autoComplete="off"
          />
          <button type="submit" name="settle" value="correct" className="button-plain">
            {say(locale, 'desk.doubtful-correct-submit')}
          </button>
        </div>
        <div className="key-row">
          <button type="submit" name="settle" value="aside" className="key-button" data-key="a">
            <kbd>A</kbd> {say(locale, 'desk.doubtful-aside')}
          </button>
        </div>
      </KeyForm>
    </>
  );
}

interface RowInput {
  readonly one: Candidate;
  readonly number: number;
  readonly fen: string;
  readonly subject: string;
  readonly isTurned: boolean;
  readonly locale: Locale;
}

function CandidateRow({ one, number, fen, subject, isTurned, locale }: RowInput): ReactElement {
  const position = parseFen(fen);
  const name = isTurned && one.kind === 'outcome' ? 'as-written' : one.kind;
  const words = say(locale, `desk.candidate-${name}`, { subject });
  return (
    <tr>
      <td>
        <button
          type="submit"
          name="settle"
          value={one.id}
          className="key-button"
          data-key={String(number)}
          aria-label={`${number}: ${words}`}
        >
          <kbd>{number}</kbd>
        </button>
      </td>
      <th scope="row">
        {words}{' '}
        {one.line === null || !position.ok ? null : (
          <LineText line={printLine(position.value, one.line, lettersOf(locale))} locale={locale} />
        )}
      </th>
      <td>
        {one.outcome === null
          ? say(locale, 'desk.doubtful-open')
          : outcomeLabel({ outcome: one.outcome, atMove: one.atMove }, locale)}
      </td>
      <td className="figures">{one.points ?? ''}</td>
    </tr>
  );
}

/** The words of the form whose buttons answer to keys. */
export function keyWords(locale: Locale) {
  return {
    keysOn: say(locale, 'desk.keys-on'),
    keysHint: say(locale, 'desk.keys-hint'),
    list: say(locale, 'desk.keys-list'),
  };
}
