'use client';

import { type ReactElement, useActionState } from 'react';
import type { FormState } from '../../_parts/form-state.ts';
import type { FormWords } from './form-words.ts';
import { TermsFields } from './terms-fields.tsx';

/** The form's state, with what was read of the position. */
export interface PuzzleFormState extends FormState {
  readonly look: {
    readonly svg: string;
    readonly caption: string;
    readonly plies: readonly { readonly ply: number; readonly label: string }[];
    readonly ply: number | null;
    readonly lines: readonly { readonly text: string; readonly read: string }[];
  } | null;
}

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
      <div className="head stack">
        <div>
          <label htmlFor="position">{words.position}</label>
          <textarea
            id="position"
            name="position"
            className="field code"
            rows={3}
            required
            spellCheck={false}
            aria-describedby="position-hint"
            defaultValue={fields.position}
          />
          <p className="hint" id="position-hint">
            {words['position-hint']}
          </p>
        </div>
        {look !== null && look.plies.length > 0 ? (
          <div>
            <label htmlFor="ply">{words.ply}</label>
            <select id="ply" name="ply" key={look.ply} defaultValue={String(look.ply)}>
              {look.plies.map(({ ply, label }) => (
                <option key={ply} value={ply}>
                  {label}
                </option>
              ))}
            </select>
          </div>
        ) : null}
        <div>
          <label htmlFor="published">{words.published}</label>
          <textarea
            id="published"
            name="published"
            className="field"
            rows={2}
            aria-describedby="published-hint"
            defaultValue={fields.published}
          />
          <p className="hint" id="published-hint">
            {words['published-hint']}
          </p>
          {look === null ? null : (
            <ul className="read-lines" aria-live="polite">
              {look.lines.map(({ text, read }) => (
                <li key={text}>{read}</li>
              ))}
            </ul>
          )}
        </div>
        <button
          type="submit"
          name="deed"
          value="look"
          formNoValidate
          className="button-plain"
          aria-disabled={isPending}
        >
          {words.look}
        </button>
      </div>
      <div className="plate">
        {look === null ? (
          <p className="plate-empty">{words['look-empty']}</p>
        ) : (
          <figure>
            {/* Drawn by our own server from a position that was read. */}
            {/* biome-ignore lint/security/noDangerouslySetInnerHtml: SVG text of the diagram renderer */}
            <div dangerouslySetInnerHTML={{ __html: look.svg }} />
            <figcaption>{look.caption}</figcaption>
          </figure>
        )}
      </div>
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
