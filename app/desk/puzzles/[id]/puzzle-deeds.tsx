import type { ReactElement } from 'react';
import type { DeskDeed } from '#lib/people/may.ts';
import { may } from '#lib/people/may.ts';
import type { Host } from '#lib/usecases/people/admit-member.ts';
import type { DeskPuzzleView } from '#lib/usecases/puzzles/show-desk-puzzle.ts';
import { say } from '#lib/words/format.ts';
import { ActionForm } from '../../_parts/action-form.tsx';
import { TextField } from '../../_parts/field.tsx';
import { closeAction, publishAction } from './actions.ts';
import { CorrectionDeeds } from './correction-deeds.tsx';
import { RegradeNote } from './regrade-note.tsx';
import { RevealDeed } from './reveal-deed.tsx';

/** What can be done to the puzzle now, and what stands against it. */
export function PuzzleDeeds({ view, host }: { view: DeskPuzzleView; host: Host }): ReactElement {
  const { locale, role } = host;
  const { state, deeds } = view;
  const has = (deed: DeskDeed): boolean => may(role, deed);
  return (
    <section className="stack" aria-labelledby="deeds">
      <h2 id="deeds">{say(locale, 'desk.deeds')}</h2>
      {view.record.publishedAt === null ? null : (
        <p className="figures">
          {say(locale, 'desk.counter', {
            solvers: view.counts.solvers,
            answers: view.counts.answers,
            waiting: view.counts.waiting,
          })}
        </p>
      )}
      {view.looks === 0 ? null : (
        <p>
          <a href={`/desk/puzzles/${view.record.id}/doubtful`}>
            {say(locale, 'desk.looks-waiting', { count: view.looks })}
          </a>
        </p>
      )}
      <RegradeNote puzzle={view.record.id} locale={locale} />
      {state === 'verified' && has('publish-puzzle') ? <Publish view={view} host={host} /> : null}
      {state === 'draft' ? <p className="quiet">{say(locale, 'desk.deeds-draft')}</p> : null}
      {(state === 'draft' || state === 'verified') && has('create-puzzle') ? (
        <p>
          <a href={`/desk/puzzles/${view.record.id}/change`}>{say(locale, 'desk.change-puzzle')}</a>
        </p>
      ) : null}
      {deeds.close.may && has('close-puzzle') ? (
        <ActionForm action={closeAction} submit={say(locale, 'desk.close-now')}>
          <input type="hidden" name="puzzle" value={view.record.id} />
          <p className="hint">{say(locale, 'desk.close-hint')}</p>
        </ActionForm>
      ) : null}
      {deeds.reveal.may && has('reveal-puzzle') ? <RevealDeed view={view} locale={locale} /> : null}
      {state === 'revealed' && has('regrade-puzzle') ? (
        <p>
          <a href={`/desk/puzzles/${view.record.id}/regrade`}>{say(locale, 'desk.regrade-link')}</a>
        </p>
      ) : null}
      <CorrectionDeeds view={view} host={host} />
    </section>
  );
}

function Publish({ view, host }: { view: DeskPuzzleView; host: Host }): ReactElement {
  const { locale } = host;
  const { publish } = view.deeds;
  if (!publish.may) {
    return (
      <>
        <p className="problem" id="publish-refused">
          {say(locale, `desk.refused-${refusalKey(publish.code)}`)}
        </p>
        <button type="button" disabled aria-describedby="publish-refused">
          {say(locale, 'desk.publish')}
        </button>
      </>
    );
  }
  return (
    <ActionForm action={publishAction} submit={say(locale, 'desk.publish')}>
      <input type="hidden" name="puzzle" value={view.record.id} />
      {view.needsReason ? (
        <TextField
          name="reason"
          label={say(locale, 'desk.publish-reason')}
          hint={say(locale, 'desk.publish-reason-hint')}
          maxLength={300}
          required
        />
      ) : null}
    </ActionForm>
  );
}

function refusalKey(code: string): 'claim-false' | 'close-is-past' | 'times-missing' | 'not-verified' {
  if (code === 'claim-false' || code === 'close-is-past' || code === 'times-missing') return code;
  return 'not-verified';
}
