'use client';

import { type ReactElement, useActionState } from 'react';
import { AreaField, SelectField, TextField } from '../../../_parts/field.tsx';
import type { FormState } from '../../../_parts/form-state.ts';
import type { CommentsWords } from './comments-words.ts';
import { PreviewTable, type ShownPreview } from './preview-table.tsx';

/** The form's state: what was looked at travels along, so that a file is picked once. */
export interface CommentsState extends FormState {
  readonly held: { readonly text: string; readonly format: string; readonly fileName: string } | null;
  readonly heads: readonly string[];
  readonly columns: Readonly<Record<string, number | null>>;
  readonly preview: ShownPreview | null;
}

const NOTHING: CommentsState = {
  problem: null,
  note: null,
  fields: {},
  held: null,
  heads: [],
  columns: {},
  preview: null,
};
const COLUMNS = ['author', 'text', 'time', 'link', 'id', 'reply'] as const;

interface Input {
  readonly action: (before: CommentsState, form: FormData) => Promise<CommentsState>;
  readonly words: CommentsWords;
  readonly puzzle: number;
  readonly exportedAt: string;
  readonly source: string;
}

/** Pastes or uploads comments: look first, store then. */
export function CommentsForm({ action, words, puzzle, exportedAt, source }: Input): ReactElement {
  const [state, send, isPending] = useActionState(action, NOTHING);
  const { fields, held, preview } = state;
  return (
    <>
      <form action={send} className="stack">
        <input type="hidden" name="puzzle" value={puzzle} />
        {held === null ? (
          <Source words={words} paste={fields.paste ?? ''} />
        ) : (
          <>
            <input type="hidden" name="held" value={held.text} />
            <input type="hidden" name="format" value={held.format} />
            <input type="hidden" name="fileName" value={held.fileName} />
            {held.fileName === '' ? null : (
              <p>
                {words['from-file']} <bdi>{held.fileName}</bdi>
              </p>
            )}
          </>
        )}
        {state.heads.length === 0 ? null : (
          <Columns words={words} heads={state.heads} columns={state.columns} />
        )}
        <div className="side-by-side">
          <TextField
            name="source"
            label={words.source}
            hint={words['source-hint']}
            maxLength={80}
            required
            defaultValue={fields.source ?? source}
          />
          <TextField
            name="exportedAt"
            label={words.exported}
            hint={words['exported-hint']}
            type="datetime-local"
            required
            defaultValue={fields.exportedAt ?? exportedAt}
          />
        </div>
        <fieldset aria-describedby="time-word-hint">
          <legend>{words['time-word']}</legend>
          <p className="hint" id="time-word-hint">
            {words['time-word-hint']}
          </p>
          {(['before', 'after', 'unknown'] as const).map((word) => (
            <label key={word} className="choice">
              <input
                type="radio"
                name="timeWord"
                value={word}
                defaultChecked={(fields.timeWord ?? 'unknown') === word}
              />
              <span>{words[`time-${word}`]}</span>
            </label>
          ))}
        </fieldset>
        {state.problem === null ? null : (
          <p className="problem" role="alert">
            {state.problem}
          </p>
        )}
        {state.note === null ? null : (
          <p className="note" role="status">
            {state.note}
          </p>
        )}
        <div className="deed-row">
          <button
            type="submit"
            name="deed"
            value="look"
            className={preview === null ? 'button-fit' : 'button-plain'}
            aria-disabled={isPending}
          >
            {words.look}
          </button>
          {preview === null ? null : (
            <button type="submit" name="deed" value="store" className="button-fit" aria-disabled={isPending}>
              {words.store}
            </button>
          )}
        </div>
      </form>
      {preview === null ? null : <PreviewTable preview={preview} words={words} />}
    </>
  );
}

function Source({ words, paste }: { words: CommentsWords; paste: string }): ReactElement {
  return (
    <>
      <AreaField name="paste" label={words.paste} hint={words['paste-hint']} rows={6} defaultValue={paste} />
      <TextField
        name="file"
        label={words.file}
        hint={words['file-hint']}
        type="file"
        accept=".csv,.tsv,.txt,.jsonl,.ndjson,text/csv,text/plain"
      />
    </>
  );
}

function Columns({
  words,
  heads,
  columns,
}: { words: CommentsWords } & Pick<CommentsState, 'heads' | 'columns'>): ReactElement {
  return (
    <fieldset>
      <legend>{words.columns}</legend>
      <div className="side-by-side">
        {COLUMNS.map((column) => (
          <SelectField
            key={`${column} ${columns[column]}`}
            name={`column-${column}`}
            label={words[`column-${column}`]}
            defaultValue={columns[column] ?? ''}
          >
            <option value="">{words['column-none']}</option>
            {places(heads).map(({ head, place }) => (
              <option key={place} value={place}>
                {head}
              </option>
            ))}
          </SelectField>
        ))}
      </div>
    </fieldset>
  );
}

function places(heads: readonly string[]): { head: string; place: number }[] {
  return heads.map((head, place) => ({ head, place }));
}
