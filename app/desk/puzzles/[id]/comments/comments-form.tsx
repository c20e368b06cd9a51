'use client';

import { type ReactElement, useActionState } from 'react';
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
          <div>
            <label htmlFor="source">{words.source}</label>
            <input
              id="source"
              name="source"
              className="field"
              maxLength={80}
              required
              defaultValue={fields.source ?? source}
              aria-describedby="source-hint"
            />
            <p className="hint" id="source-hint">
              {words['source-hint']}
            </p>
          </div>
          <div>
            <label htmlFor="exportedAt">{words.exported}</label>
            <input
              id="exportedAt"
              name="exportedAt"
              type="datetime-local"
              required
              defaultValue={fields.exportedAt ?? exportedAt}
              aria-describedby="exported-hint"
            />
            <p className="hint" id="exported-hint">
              {words['exported-hint']}
            </p>
          </div>
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
      <div>
        <label htmlFor="paste">{words.paste}</label>
        <textarea
          id="paste"
          name="paste"
          className="field"
          rows={6}
          defaultValue={paste}
          aria-describedby="paste-hint"
        />
        <p className="hint" id="paste-hint">
          {words['paste-hint']}
        </p>
      </div>
      <div>
        <label htmlFor="file">{words.file}</label>
        <input
          id="file"
          name="file"
          type="file"
          accept=".csv,.tsv,.txt,.jsonl,.ndjson,text/csv,text/plain"
          aria-describedby="file-hint"
        />
        <p className="hint" id="file-hint">
          {words['file-hint']}
        </p>
      </div>
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
          <div key={column}>
            <label htmlFor={`column-${column}`}>{words[`column-${column}`]}</label>
            <select
              id={`column-${column}`}
              name={`column-${column}`}
              key={String(columns[column])}
              defaultValue={columns[column] ?? ''}
            >
              <option value="">{words['column-none']}</option>
              {places(heads).map(({ head, place }) => (
                <option key={place} value={place}>
                  {head}
                </option>
              ))}
            </select>
          </div>
        ))}
      </div>
    </fieldset>
  );
}

function places(heads: readonly string[]): { head: string; place: number }[] {
  return heads.map((head, place) => ({ head, place }));
}
