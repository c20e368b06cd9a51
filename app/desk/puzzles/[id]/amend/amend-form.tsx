'use client';

import { type ReactElement, useActionState } from 'react';
import { AreaField, TextField } from '../../../_parts/field.tsx';
import { LookPlate, PositionFields, Problem } from '../../new/position-fields.tsx';
import type { PuzzleFormState } from '../../new/puzzle-form-state.ts';
import { MoreTerms, TaskFields, TitleField } from '../../new/terms-fields.tsx';
import type { AmendWords } from './amend-words.ts';

interface Input {
  readonly action: (before: PuzzleFormState, form: FormData) => Promise<PuzzleFormState>;
  readonly words: AmendWords;
  readonly typed: Readonly<Record<string, string>>;
  /** The puzzle as it stands. */
  readonly look: PuzzleFormState['look'];
}

/** The terms of a published puzzle as fields: correct, look at it, have it verified. Works without scripts. */
export function AmendForm({ action, words, typed, look: first }: Input): ReactElement {
  const unsent: PuzzleFormState = { problem: null, note: null, fields: {}, look: first };
  const [state, send, isPending] = useActionState(action, unsent);
  const { look, problem } = state;
  const fields = Object.keys(state.fields).length > 0 ? state.fields : typed;
  const isSaved = state.fields.deed === 'save';
  return (
    <form action={send} className="two-columns new-puzzle">
      <input type="hidden" name="puzzle" value={typed.puzzle} />
      <PositionFields
        words={words}
        fields={fields}
        look={look}
        isPending={isPending}
        problem={isSaved ? null : problem}
      />
      <LookPlate look={look} empty={words['look-empty']} />
      <div className="body stack">
        <AmendFields words={words} fields={fields} />
        <Problem problem={isSaved ? problem : null} />
        <button type="submit" name="deed" value="save" aria-disabled={isPending}>
          {words['amend-ask']}
        </button>
      </div>
    </form>
  );
}

const BOUNDS = [
  ['winBound', 'amend-win-bound'],
  ['slipBound', 'amend-slip-bound'],
  ['drawBound', 'amend-draw-bound'],
  ['drawSlipBound', 'amend-draw-slip-bound'],
] as const;

function AmendFields({
  words,
  fields,
}: Pick<Input, 'words'> & { readonly fields: Input['typed'] }): ReactElement {
  return (
    <>
      <TaskFields words={words} fields={fields} />
      <TitleField words={words} fields={fields} />
      <AreaField
        name="note"
        label={words['correction-note-needed']}
        hint={words['correction-note-hint']}
        rows={2}
        required
        defaultValue={fields.note}
      />
      <MoreTerms words={words} fields={fields} ticks={['mate-written', 'any-defence', 'strict']}>
        <fieldset>
          <legend>{words['amend-bounds']}</legend>
          <div className="side-by-side">
            {BOUNDS.map(([name, word]) => (
              <TextField
                key={name}
                name={name}
                label={words[word]}
                defaultValue={fields[name]}
                type="number"
                required
              />
            ))}
          </div>
        </fieldset>
      </MoreTerms>
    </>
  );
}
