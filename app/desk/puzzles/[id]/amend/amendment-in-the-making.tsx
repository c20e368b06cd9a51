import type { ReactElement } from 'react';
import type { AmendmentView, ShownAmendment } from '#lib/usecases/puzzles/show-amendment.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { BoardFigure } from '../../../../_ui/board-figure.tsx';
import { taskHeadline } from '../../../../_ui/puzzle-heads.ts';
import { ActionForm } from '../../../_parts/action-form.tsx';
import { TextField } from '../../../_parts/field.tsx';
import { SoundnessReport } from '../soundness-report.tsx';
import { cancelAction, putInForceAction } from './actions.ts';
import { WhatWouldChange } from './what-would-change.tsx';

interface Input {
  readonly view: AmendmentView;
  readonly amendment: ShownAmendment;
  readonly locale: Locale;
}

/** A correction that is not in force: how far its verification is, what it found, what would change. */
export function AmendmentInTheMaking({ view, amendment, locale }: Input): ReactElement {
  const { fen, task } = amendment.terms;
  const headline = taskHeadline({ turn: fen.split(' ')[1] === 'b' ? 'b' : 'w', task }, locale);
  const hasFailed = amendment.state === 'failed';
  const { progress } = amendment;
  return (
    <div className="two-columns">
      <div className="head">
        <p className="how-far">{headline}</p>
      </div>
      <BoardFigure
        fen={fen}
        title={headline}
        locale={locale}
        id="amended"
        caption={say(locale, 'desk.amend-then')}
      />
      <div className="body stack">
        {hasFailed ? (
          <p className="problem" role="alert">
            {say(locale, 'desk.amend-failed', { failure: amendment.failure ?? '' })}
          </p>
        ) : null}
        <SoundnessReport
          view={{ record: view.record, report: amendment.report, progress: hasFailed ? null : progress }}
          locale={locale}
        />
        <WhatWouldChange view={view} amendment={amendment} locale={locale} />
        {amendment.state === 'verified' ? (
          <PutInForce view={view} amendment={amendment} locale={locale} />
        ) : null}
        <ActionForm action={cancelAction} submit={say(locale, 'desk.amend-cancel')} isPlain>
          <input type="hidden" name="puzzle" value={view.record.id} />
          <p className="hint">{say(locale, 'desk.amend-cancel-hint')}</p>
        </ActionForm>
      </div>
    </div>
  );
}

function PutInForce({ view, amendment, locale }: Input): ReactElement {
  if (amendment.claim === 'false') return <p className="problem">{say(locale, 'desk.amend-claim-false')}</p>;
  return (
    <ActionForm action={putInForceAction} submit={say(locale, 'desk.amend-put')}>
      <input type="hidden" name="puzzle" value={view.record.id} />
      <p>{say(locale, 'desk.amend-answers', { count: view.answers })}</p>
      {view.state === 'revealed' ? <p>{say(locale, 'desk.amend-revealed')}</p> : null}
      <p className="hint">{say(locale, 'desk.amend-put-hint')}</p>
      {amendment.needsReason ? (
        <TextField
          name="reason"
          label={say(locale, 'desk.amend-reason')}
          hint={say(locale, 'desk.publish-reason-hint')}
          maxLength={300}
          required
        />
      ) : null}
    </ActionForm>
  );
}
