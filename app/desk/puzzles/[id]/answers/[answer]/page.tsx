import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import type { ReactElement } from 'react';
import { type DeskMark, showMark } from '#lib/usecases/answers/show-mark.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { outcomeLabel } from '#lib/words/outcome-label.ts';
import { requireHost } from '../../../../../_auth/require-host.ts';
import { BoardFigure } from '../../../../../_ui/board-figure.tsx';
import { LedgerTable } from '../../../../../_ui/mark-view.tsx';
import { QuotedText } from '../../../../../_ui/quoted-text.tsx';
import { sayMoment } from '../../../../../_ui/say-times.ts';
import { unbroken } from '../../../../../_ui/unbroken.ts';
import { ActionForm } from '../../../../_parts/action-form.tsx';
import { DeskPage } from '../../../../_parts/desk-page.tsx';
import { SelectField, TextField } from '../../../../_parts/field.tsx';
import { puzzleForFrame, puzzleNumber, requirePuzzle } from '../../../../_parts/find-puzzle.ts';
import { labelled } from '../../doubtful/look-question.tsx';
import { overruleAction } from './actions.ts';
import { LookNote } from './look-note.tsx';

interface Place {
  readonly params: Promise<{ readonly id: string; readonly answer: string }>;
}

export async function generateMetadata({ params }: Place): Promise<Metadata> {
  const { locale } = await requireHost();
  return { title: say(locale, 'desk.answer-number', { number: puzzleNumber((await params).answer) }) };
}

export default async function AnswerPage({ params }: Place): Promise<ReactElement> {
  const host = await requireHost();
  const { locale } = host;
  const { id, answer } = await params;
  const puzzle = await requirePuzzle(host, id);
  const shown = await showMark({ puzzleId: puzzle.record.id, answerId: puzzleNumber(answer), locale });
  if (shown === null) notFound();
  const { zone } = puzzle.record;
  const { mark, ledger } = shown;
  // It tells the program's mark: under a mark of a person's it stands with what the program found.
  const explanation = unbroken(shown.explanation ?? '');
  const turn = shown.fen.split(' ')[1] === 'b' ? 'b' : 'w';
  return (
    <DeskPage host={host} place="answers" puzzle={puzzleForFrame(puzzle)}>
      <div className="two-columns">
        <div className="head stack">
          <p className="label red">{say(locale, 'desk.answer-number', { number: shown.answer.id })}</p>
          <h1>{mark === null ? say(locale, 'desk.not-marked') : outcomeLabel(labelled(mark), locale)}</h1>
          {mark === null ? null : (
            <p>
              {say(locale, 'pages.points-of', { points: mark.points, most: shown.mostPoints })}{' '}
              {mark.overrule == null ? explanation : ''}
            </p>
          )}
          {shown.program === null || mark?.overrule == null ? null : (
            <p className="note">
              {say(locale, 'desk.overruled-beside', {
                outcome: outcomeLabel(labelled(shown.program), locale),
                why: mark.overrule.why,
              })}{' '}
              {explanation}
            </p>
          )}
          <p className="quiet">
            {say(locale, 'desk.doubtful-from', {
              name: shown.answer.name ?? say(locale, 'desk.comments-no-author'),
              channel: say(locale, `desk.channel-${shown.answer.channel}`),
              at: sayMoment(shown.answer.statedFrom ?? shown.answer.receivedAt, zone, locale),
            })}
            {shown.answer.standing === 'counted'
              ? ''
              : ` · ${say(locale, `desk.standing-${shown.answer.standing}`)}`}
          </p>
          <QuotedText text={shown.answer.text} line={mark?.reading ?? []} />
        </div>
        <BoardFigure
          fen={ledger?.fen ?? shown.fen}
          title={puzzle.record.title}
          locale={locale}
          id="mark"
          lastMove={ledger?.lastMove ?? null}
        />
        <div className="body stack">
          {ledger === null || ledger.rows.length === 0 ? null : (
            <LedgerTable ledger={ledger} locale={locale} turn={turn} />
          )}
          <LookNote shown={shown} puzzle={puzzle.record.id} zone={zone} locale={locale} />
          {mark === null ? null : <OverruleForm shown={shown} puzzle={puzzle.record.id} locale={locale} />}
          <History shown={shown} zone={zone} locale={locale} />
        </div>
      </div>
    </DeskPage>
  );
}

function OverruleForm({
  shown,
  puzzle,
  locale,
}: {
  shown: DeskMark;
  puzzle: number;
  locale: Locale;
}): ReactElement {
  return (
    <details>
      <summary>{say(locale, 'desk.overrule')}</summary>
      <ActionForm action={overruleAction} submit={say(locale, 'desk.overrule-submit')} isPlain>
        <input type="hidden" name="puzzle" value={puzzle} />
        <input type="hidden" name="answer" value={shown.answer.id} />
        <div className="side-by-side">
          <SelectField
            name="outcome"
            label={say(locale, 'desk.doubtful-outcome')}
            defaultValue={shown.mark?.outcome}
          >
            {shown.outcomes.map((outcome) => (
              <option key={outcome} value={outcome}>
                {say(locale, `desk.outcome-${outcome}`)}
              </option>
            ))}
          </SelectField>
          <TextField
            name="points"
            label={say(locale, 'desk.doubtful-points')}
            hint={say(locale, 'desk.overrule-points-hint')}
            type="number"
            min={0}
            max={shown.mostPoints}
          />
        </div>
        <TextField
          name="why"
          label={say(locale, 'desk.overrule-why')}
          hint={say(locale, 'desk.overrule-why-hint')}
          required
          maxLength={300}
        />
      </ActionForm>
    </details>
  );
}

function History({
  shown,
  zone,
  locale,
}: {
  shown: DeskMark;
  zone: string;
  locale: Locale;
}): ReactElement | null {
  if (shown.history.length < 2) return null;
  return (
    <section>
      <h2>{say(locale, 'desk.mark-history')}</h2>
      <ul className="contents">
        {shown.history.map((step) => (
          <li key={step.id}>
            <span>
              {outcomeLabel(step, locale)}, <span className="figures">{step.points}</span>
              {step.why === null ? '' : ` · ${step.why}`}
            </span>
            <span className="quiet">
              {step.by ?? say(locale, 'desk.by-program')} · {sayMoment(step.at, zone, locale)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
