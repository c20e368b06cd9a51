'use client';

import { type ReactElement, useActionState } from 'react';
import type { FormWords } from './form-words.ts';
import { LookPlate, PositionFields, Problem } from './position-fields.tsx';
import type { PuzzleFormState } from './puzzle-form-state.ts';
import { TermsFields } from './terms-fields.tsx';

interface Input {
  readonly action: (before: PuzzleFormState, form: FormData) => Promise<PuzzleFormState>;
  readonly words: FormWords;
  readonly typed: Readonly<Record<string, string>>;
  /** The draft as it was read; null for a new puzzle. */
  readonly look: PuzzleFormState['look'];
  readonly zones: readonly string[];
}

/** Sets a puzzle: paste, look at it, save. Without scripts each button asks the server. */
export function NewPuzzleForm({ action, words, typed, look: first, zones }: Input): ReactElement {
  const unsent: PuzzleFormState = { problem: null, note: null, fields: {}, look: first };
  const [state, send, isPending] = useActionState(action, unsent);
  const { look, problem } = state;
  const isSent = Object.keys(state.fields).length > 0;
  const fields = isSent ? state.fields : typed;
  const isSaved = state.fields.deed === 'save';
  return (
    <form action={send} className="two-columns new-puzzle">
      {fields.puzzle === undefined ? null : <input type="hidden" name="puzzle" value={fields.puzzle} />}
      <PositionFields
        words={words}
        fields={fields}
        look={look}
        isPending={isPending}
        problem={isSaved ? null : problem}
      />
      <LookPlate look={look} empty={words['look-empty']} />
      <div className="body stack">
        <TermsFields words={words} fields={fields} zones={zones} />
        <Problem problem={isSaved ? problem : null} />
        <button type="submit" name="deed" value="save" aria-disabled={isPending}>
          {words.save}
        </button>
      </div>
    </form>
  );
}
