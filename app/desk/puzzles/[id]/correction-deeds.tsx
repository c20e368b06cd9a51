import type { ReactElement } from 'react';
import { may } from '#lib/people/may.ts';
import type { Host } from '#lib/usecases/people/admit-member.ts';
import type { DeskPuzzleView } from '#lib/usecases/puzzles/show-desk-puzzle.ts';
import { say } from '#lib/words/format.ts';
import type { Locale } from '#lib/words/locale.ts';
import { ActionForm } from '../../_parts/action-form.tsx';
import { AreaField, SelectField, TextField } from '../../_parts/field.tsx';
import { fieldTime } from '../../_parts/field-time.ts';
import { ZONES } from '../../_parts/zones.ts';
import { voidAction } from './actions.ts';
import { moveCloseAction } from './correction-actions.ts';

/** What can be put right on a published puzzle (rule A6). */
export function CorrectionDeeds({ view, host }: { view: DeskPuzzleView; host: Host }): ReactElement {
  const { role } = host;
  const { state, deeds } = view;
  const canMove = state === 'published' || state === 'open' || state === 'closed';
  return (
    <>
      {(canMove || state === 'revealed') && may(role, 'amend-puzzle') ? (
        <p>
          <a href={`/desk/puzzles/${view.record.id}/amend`}>
            {say(host.locale, view.isBeingAmended ? 'desk.amend-open-link' : 'desk.amend')}
          </a>
        </p>
      ) : null}
      {canMove && may(role, 'extend-puzzle') ? <MoveClose view={view} locale={host.locale} /> : null}
      {deeds.void.may && may(role, 'void-puzzle') ? <DeclareVoid view={view} locale={host.locale} /> : null}
    </>
  );
}

interface Input {
  readonly view: DeskPuzzleView;
  readonly locale: Locale;
}

function MoveClose({ view, locale }: Input): ReactElement {
  const { record } = view;
  const { zone } = record;
  return (
    <details>
      <summary>{say(locale, 'desk.move-close')}</summary>
      <ActionForm action={moveCloseAction} submit={say(locale, 'desk.move-close-now')}>
        <input type="hidden" name="puzzle" value={record.id} />
        <p className="hint">{say(locale, 'desk.move-close-hint')}</p>
        <div className="side-by-side">
          <TextField
            id="new-close"
            name="closesAt"
            label={say(locale, 'desk.new-close')}
            type="datetime-local"
            required
            defaultValue={record.closesAt === null ? '' : fieldTime(record.closesAt, zone)}
          />
          <SelectField id="close-zone" name="zone" label={say(locale, 'desk.form-zone')} defaultValue={zone}>
            {ZONES.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </SelectField>
        </div>
        <NoteField id="close-note" locale={locale} />
      </ActionForm>
    </details>
  );
}

function DeclareVoid({ view, locale }: Input): ReactElement {
  return (
    <details>
      <summary>{say(locale, 'desk.void')}</summary>
      <ActionForm action={voidAction} submit={say(locale, 'desk.void-now')} isPlain>
        <input type="hidden" name="puzzle" value={view.record.id} />
        <p className="hint">{say(locale, 'desk.void-hint')}</p>
        <NoteField id="void-note" locale={locale} />
      </ActionForm>
    </details>
  );
}

/** The host's words for the notice. */
function NoteField({ id, locale }: { id: string; locale: Locale }): ReactElement {
  return (
    <AreaField
      id={id}
      name="note"
      label={say(locale, 'desk.correction-note')}
      hint={say(locale, 'desk.correction-note-hint')}
      rows={2}
    />
  );
}
