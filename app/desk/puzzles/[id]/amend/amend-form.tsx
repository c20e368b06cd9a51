'use client';

import { type ReactElement, useActionState } from 'react';
import { LookPlate, PositionFields } from '../../new/position-fields.tsx';
import type { PuzzleFormState } from '../../new/puzzle-form-state.ts';
import type { AmendWords } from './amend-words.ts';

interface Input {
  readonly action: (before: PuzzleFormState, form: FormData) => Promise<PuzzleFormState>;
  readonly words: AmendWords;
  readonly typed: Readonly<Record<string, string>>;
}

/** The terms of a published puzzle as fields: correct, look at it, have it verified. Works without scripts. */
export function AmendForm({ action, words, typed }: Input): ReactElement {
  const [state, send, isPending] = useActionState(action, {
    problem: null,
    note: null,
    fields: {},
    look: null,
  });
  const { look } = state;
  const fields = Object.keys(state.fields).length > 0 ? state.fields : typed;
  return (
    <form action={send} className="two-columns new-puzzle">
      <input type="hidden" name="puzzle" value={typed.puzzle} />
      <PositionFields words={words} fields={fields} look={look} isPending={isPending} />
      <LookPlate look={look} empty={words['look-empty']} />
      <div className="body stack">
        <AmendFields words={words} fields={fields} />
        {state.problem === null || state.problem === '' ? null : (
          <p className="problem" role="alert">
            {state.problem}
          </p>
        )}
        <button type="submit" name="deed" value="save" aria-disabled={isPending}>
          {words['amend-ask']}
        </button>
      </div>
    </form>
  );
}

interface FieldsInput {
  readonly words: AmendWords;
  readonly fields: Readonly<Record<string, string>>;
}

function AmendFields({ words, fields }: FieldsInput): ReactElement {
  const text = (name: string, label: string, more: Readonly<Record<string, unknown>> = {}): ReactElement => (
    <div>
      <label htmlFor={name}>{label}</label>
      <input id={name} name={name} className="field" defaultValue={fields[name]} {...more} />
    </div>
  );
  return (
    <>
      <div className="side-by-side">
        <div>
          <label htmlFor="task">{words.task}</label>
          <select id="task" name="task" key={fields.task} defaultValue={fields.task}>
            <option value="mate">{words['task-mate']}</option>
            <option value="win">{words['task-win']}</option>
            <option value="draw">{words['task-draw']}</option>
          </select>
        </div>
        {text('moves', words.moves, { type: 'number', min: 1, max: 30 })}
      </div>
      <div>
        {text('title', words.title, { maxLength: 120, 'aria-describedby': 'title-hint' })}
        <p className="hint" id="title-hint">
          {words['title-hint']}
        </p>
      </div>
      <div>
        <label htmlFor="note">{words['correction-note-needed']}</label>
        <textarea
          id="note"
          name="note"
          className="field"
          rows={2}
          required
          aria-describedby="note-hint"
          defaultValue={fields.note}
        />
        <p className="hint" id="note-hint">
          {words['correction-note-hint']}
        </p>
      </div>
      <MoreTerms words={words} fields={fields} text={text} />
    </>
  );
}

interface MoreInput extends FieldsInput {
  text(name: string, label: string, more?: Readonly<Record<string, unknown>>): ReactElement;
}

function MoreTerms({ words, fields, text }: MoreInput): ReactElement {
  const tick = (name: string, label: string): ReactElement => (
    <label className="choice">
      <input type="checkbox" name={name} defaultChecked={fields[name] !== undefined} />
      <span>{label}</span>
    </label>
  );
  return (
    <details>
      <summary>{words.more}</summary>
      <div className="stack">
        <div>
          {text('howFar', words['how-far'], { maxLength: 200, 'aria-describedby': 'how-far-hint' })}
          <p className="hint" id="how-far-hint">
            {words['how-far-hint']}
          </p>
        </div>
        <div>
          {text('solverMoves', words['solver-moves'], {
            type: 'number',
            min: 1,
            max: 99,
            'aria-describedby': 'solver-moves-hint',
          })}
          <p className="hint" id="solver-moves-hint">
            {words['solver-moves-hint']}
          </p>
        </div>
        {tick('mateWritten', words['mate-written'])}
        {tick('anyDefence', words['any-defence'])}
        {tick('isStrict', words.strict)}
        <fieldset>
          <legend>{words['amend-bounds']}</legend>
          <div className="side-by-side">
            {text('winBound', words['amend-win-bound'], { type: 'number', required: true })}
            {text('slipBound', words['amend-slip-bound'], { type: 'number', required: true })}
            {text('drawBound', words['amend-draw-bound'], { type: 'number', required: true })}
            {text('drawSlipBound', words['amend-draw-slip-bound'], { type: 'number', required: true })}
          </div>
        </fieldset>
      </div>
    </details>
  );
}
