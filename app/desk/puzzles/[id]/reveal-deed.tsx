import type { ReactElement } from 'react';
import type { DeskPuzzleView } from '#lib/usecases/puzzles/show-desk-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { ActionForm } from '../../_parts/action-form.tsx';
import { revealAction } from './actions.ts';
import { openMoveText } from './say-open-rulings.ts';

interface Input {
  readonly view: DeskPuzzleView;
  readonly locale: Locale;
}

/** The reveal: what is still open stands before it, and unclear moves ask for a second press (rule V8). */
export function RevealDeed({ view, locale }: Input): ReactElement {
  const { record, rulings, counts } = view;
  const list = `/desk/puzzles/${record.id}/doubtful`;
  return (
    <>
      {rulings.open.length === 0 ? null : <OpenMoves view={view} locale={locale} />}
      {rulings.others === 0 ? null : (
        <p className="problem">
          {say(locale, 'desk.reveal-doubtful', { count: rulings.others })}{' '}
          <a href={list}>{say(locale, 'desk.reveal-to-list')}</a>
        </p>
      )}
      {counts.waiting === 0 ? null : (
        <p className="problem">{say(locale, 'desk.reveal-waiting', { count: counts.waiting })}</p>
      )}
      {rulings.open.length === 0 ? (
        <ActionForm action={revealAction} submit={say(locale, 'desk.reveal-now')}>
          <input type="hidden" name="puzzle" value={record.id} />
          <p className="hint">{say(locale, 'desk.reveal-hint')}</p>
        </ActionForm>
      ) : (
        <details>
          <summary>{say(locale, 'desk.reveal-all-the-same')}</summary>
          <ActionForm action={revealAction} submit={say(locale, 'desk.reveal-benefit')}>
            <input type="hidden" name="puzzle" value={record.id} />
            {rulings.open.map(({ doubt }) => (
              <input key={doubt} type="hidden" name="agreed" value={doubt} />
            ))}
            <p>{say(locale, 'desk.reveal-benefit-hint', { count: rulings.open.length })}</p>
            <p className="hint">{say(locale, 'desk.reveal-hint')}</p>
          </ActionForm>
        </details>
      )}
    </>
  );
}

function OpenMoves({ view, locale }: Input): ReactElement {
  const { record, rulings } = view;
  return (
    <div className="problem">
      <p id="open-moves">{say(locale, 'desk.reveal-open', { count: rulings.open.length })}</p>
      <ul className="contents" aria-labelledby="open-moves">
        {rulings.open.map((one) => (
          <li key={one.doubt}>
            <a
              className="moves"
              href={`/desk/puzzles/${record.id}/doubtful?group=${encodeURIComponent(one.doubt)}`}
            >
              {openMoveText(one, locale)}
            </a>
            <span className="quiet">{say(locale, 'desk.reveal-open-answers', { count: one.answers })}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
