'use client';

import { type ReactElement, useActionState } from 'react';
import type { FormWords } from './form-words.ts';
import { LookPlate, PositionFields } from './position-fields.tsx';
import type { PuzzleFormState } from './puzzle-form-state.ts';
import { TermsFields } from './terms-fields.tsx';

interface Input {
  readonly action: (before: PuzzleFormState, form: FormData) => Promise<PuzzleFormState>;
  readonly words: FormWords;
  readonly typed: Readonly<Record<string, string>>;
  readonly zones: readonly string[];
}

/** Sets a puzzle: paste, look at it, save. Without scripts each button asks the server. */
export function NewPuzzleForm({ action, words, typed, zones }: Input): ReactElement {
  const [state, send, isPending] = useActionState(action, {
    problem: null,
    note: null,
    fields: {},
    look: null,
  });
  const { look } = state;
  const isSent = Object.keys(state.fields).length > 0;
  const fields = isSent ? state.fields : typed;
  return (
    <form action={send} className="two-columns new-puzzle">
      {fields.puzzle === undefined ? null : <input type="hidden" name="puzzle" value={fields.puzzle} />}
      <PositionFields words={words} fields={fields} look={look} isPending={isPending} />
      <LookPlate look={look} empty={words['look-empty']} />
      <div className="body stack">
        <TermsFields words={words} fields={fields} zones={zones} />
        {state.problem === null || state.problem === '' ? null : (
          <p className="problem" role="alert">
            {state.problem}
          </p>
        )}
        <button type="submit" name="deed" value="save" aria-disabled={isPending}>
          {words.save}
        </button>
      </div>
    </form>
  );
}
