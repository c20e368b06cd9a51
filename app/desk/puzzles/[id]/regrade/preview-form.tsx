import type { ReactElement } from 'react';
import type { OpenRegrade, RegradeLine, ShownPreview, ToldMark } from '#lib/usecases/answers/show-regrade.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { outcomeLabel } from '#lib/words/outcome-label.ts';
import { ActionForm } from '../../../_parts/action-form.tsx';
import { applyAction } from './actions.ts';

interface Input {
  readonly puzzle: number;
  readonly open: OpenRegrade;
  readonly preview: ShownPreview;
  readonly isOwner: boolean;
  readonly locale: Locale;
}

/** What would change, and the host's word on it. */
export function PreviewForm(input: Input): ReactElement {
  const { puzzle, open, preview, isOwner, locale } = input;
  const parts = (
    <>
      <Sums preview={preview} isRenewed={open.isRenewed} locale={locale} />
      <Asked {...input} />
      <Others {...input} />
      <Overruled {...input} />
    </>
  );
  if (!isOwner) {
    return (
      <div className="stack">
        {parts}
        <p>{say(locale, 'desk.regrade-owner')}</p>
      </div>
    );
  }
  return (
    <ActionForm action={applyAction} submit={say(locale, 'desk.regrade-apply')}>
      <input type="hidden" name="puzzle" value={puzzle} />
      <input type="hidden" name="regrade" value={open.id} />
      <input type="hidden" name="round" value={open.round} />
      {parts}
      <p className="hint">{say(locale, 'desk.regrade-apply-hint')}</p>
    </ActionForm>
  );
}

interface SumsInput {
  readonly preview: ShownPreview;
  readonly isRenewed: boolean;
  readonly locale: Locale;
}

function Sums({ preview, isRenewed, locale }: SumsInput): ReactElement {
  const { rise, fall, same, unjudged, counts } = preview;
  return (
    <section className="stack" aria-labelledby="what">
      <h2 id="what">{say(locale, 'desk.regrade-what')}</h2>
      {isRenewed ? <p className="problem">{say(locale, 'desk.regrade-renewed')}</p> : null}
      <ul className="read-lines figures">
        {counts.asked + counts.others === 0 ? <li>{say(locale, 'desk.regrade-nothing')}</li> : null}
        {fall.marks === 0 ? null : <li>{say(locale, 'desk.regrade-fall', fall)}</li>}
        {rise.marks === 0 ? null : <li>{say(locale, 'desk.regrade-rise', rise)}</li>}
        <li>{say(locale, 'desk.regrade-same', { same })}</li>
        {unjudged === 0 ? null : <li>{say(locale, 'desk.regrade-unjudged', { count: unjudged })}</li>}
      </ul>
    </section>
  );
}

function Asked({ puzzle, open, preview, isOwner, locale }: Input): ReactElement | null {
  const { asked, counts } = preview;
  if (asked.length === 0) return null;
  const more = counts.asked - asked.length;
  return (
    <section aria-labelledby="asked">
      <h2 id="asked">{say(locale, 'desk.regrade-asked')}</h2>
      <p className="hint">{say(locale, 'desk.regrade-asked-hint')}</p>
      <table className="changes">
        <Head hasYes={isOwner} locale={locale} />
        <tbody>
          {asked.map((line) => (
            <tr key={line.answerId}>
              {isOwner ? (
                <td className="tick">
                  <label>
                    <input
                      type="checkbox"
                      name="agreed"
                      value={line.answerId}
                      defaultChecked={open.agreed.includes(line.answerId)}
                    />
                    <span className="out-of-sight">{sayYesTo(line, locale)}</span>
                  </label>
                </td>
              ) : null}
              <Change line={line} puzzle={puzzle} locale={locale} />
            </tr>
          ))}
        </tbody>
      </table>
      {more <= 0 ? null : <p className="hint">{say(locale, 'desk.regrade-asked-more', { count: more })}</p>}
    </section>
  );
}

function Others({ puzzle, preview, locale }: Input): ReactElement | null {
  const { others, counts } = preview;
  if (others.length === 0) return null;
  const more = counts.others - others.length;
  return (
    <section aria-labelledby="others">
      <h2 id="others">{say(locale, 'desk.regrade-others')}</h2>
      <table className="changes">
        <Head hasYes={false} locale={locale} />
        <tbody>
          {others.map((line) => (
            <tr key={line.answerId}>
              <Change line={line} puzzle={puzzle} locale={locale} />
            </tr>
          ))}
        </tbody>
      </table>
      {more <= 0 ? null : <p className="hint">{say(locale, 'desk.regrade-others-more', { count: more })}</p>}
    </section>
  );
}

function Overruled({ puzzle, preview, locale }: Input): ReactElement | null {
  if (preview.overruled.length === 0) return null;
  return (
    <section aria-labelledby="overruled">
      <h2 id="overruled">{say(locale, 'desk.regrade-overruled')}</h2>
      <p className="hint">{say(locale, 'desk.regrade-overruled-hint')}</p>
      <ul className="links">
        {preview.overruled.map(({ answerId, name }) => (
          <li key={answerId}>
            <a href={`/desk/puzzles/${puzzle}/answers/${answerId}`}>
              <bdi>{name ?? say(locale, 'desk.comments-no-author')}</bdi>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Head({ hasYes, locale }: { hasYes: boolean; locale: Locale }): ReactElement {
  return (
    <thead>
      <tr>
        {hasYes ? <th scope="col">{say(locale, 'desk.regrade-head-yes')}</th> : null}
        <th scope="col">{say(locale, 'desk.regrade-head-who')}</th>
        <th scope="col">{say(locale, 'desk.regrade-head-change')}</th>
        <th scope="col" className="number">
          {say(locale, 'desk.regrade-head-points')}
        </th>
      </tr>
    </thead>
  );
}

function Change({
  line,
  puzzle,
  locale,
}: {
  line: RegradeLine;
  puzzle: number;
  locale: Locale;
}): ReactElement {
  const beside = [
    line.wordFor === null ? null : say(locale, `desk.regrade-word-${line.wordFor}`),
    line.standing === 'counted' ? null : say(locale, `desk.standing-${line.standing}`),
  ].filter((one) => one !== null);
  return (
    <>
      <th scope="row">
        <a href={`/desk/puzzles/${puzzle}/answers/${line.answerId}`}>
          <bdi>{nameOf(line, locale)}</bdi>
        </a>
      </th>
      <td>
        {markWords(line.from, locale)}
        <span className="arrow" aria-hidden="true">
          {' → '}
        </span>
        <span className="out-of-sight"> {say(locale, 'desk.regrade-becomes')} </span>
        {markWords(line.to, locale)}
        {beside.length === 0 ? null : <span className="beside quiet">{beside.join(' · ')}</span>}
      </td>
      <td className="number">{sayPoints(line.points, locale)}</td>
    </>
  );
}

/** "Right so far, 1 of 2". */
function markWords(mark: ToldMark, locale: Locale): string {
  const label = outcomeLabel(mark, locale);
  return mark.share === null ? label : say(locale, 'desk.regrade-share', { label, ...mark.share });
}

function nameOf(line: RegradeLine, locale: Locale): string {
  return line.name ?? say(locale, 'desk.comments-no-author');
}

/** "+5", "−3" with a true minus, "0". */
function sayPoints(points: number, locale: Locale): string {
  const figure = new Intl.NumberFormat(locale).format(Math.abs(points));
  return points > 0 ? `+${figure}` : points < 0 ? `−${figure}` : figure;
}

function sayYesTo(line: RegradeLine, locale: Locale): string {
  return say(locale, 'desk.regrade-yes-to', {
    name: nameOf(line, locale),
    from: markWords(line.from, locale),
    to: markWords(line.to, locale),
    points: sayPoints(line.points, locale),
  });
}
