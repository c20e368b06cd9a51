import type { ReactElement, ReactNode } from 'react';
import { SelectField, TextField } from '../../_parts/field.tsx';
import type { FormWords } from './form-words.ts';

interface Input {
  readonly words: FormWords;
  readonly fields: Readonly<Record<string, string>>;
}

/** Task, titles, times and terms of a puzzle. Keys make React take the values of a sent form over. */
export function TermsFields({
  words,
  fields,
  zones,
}: Input & { readonly zones: readonly string[] }): ReactElement {
  return (
    <>
      <TaskFields words={words} fields={fields} />
      <div className="side-by-side">
        <TextField
          name="episodeNumber"
          label={words['episode-number']}
          defaultValue={fields.episodeNumber}
          type="number"
          min={1}
          required
        />
        <TextField
          name="episodeTitle"
          label={words['episode-title']}
          defaultValue={fields.episodeTitle}
          maxLength={120}
          required
        />
      </div>
      <TitleField words={words} fields={fields} />
      <div className="side-by-side">
        <TextField
          name="opensAt"
          label={words.opens}
          defaultValue={fields.opensAt}
          type="datetime-local"
          required
        />
        <TextField
          name="closesAt"
          label={words.closes}
          defaultValue={fields.closesAt}
          type="datetime-local"
          required
        />
      </div>
      <SelectField name="zone" label={words.zone} key={fields.zone} defaultValue={fields.zone}>
        {zones.map((zone) => (
          <option key={zone}>{zone}</option>
        ))}
      </SelectField>
      <fieldset>
        <legend>{words.scheme}</legend>
        {(['full-line', 'key-move'] as const).map((scheme) => (
          <label key={scheme} className="choice">
            <input type="radio" name="scheme" value={scheme} defaultChecked={fields.scheme === scheme} />
            <span>{words[`scheme-${scheme}`]}</span>
          </label>
        ))}
      </fieldset>
      <MoreTerms
        words={words}
        fields={fields}
        ticks={['mate-written', 'any-defence', 'strict', 'counts-first']}
      />
    </>
  );
}

/** What is asked: the kind of task, and in how many moves. */
export function TaskFields({ words, fields }: Input): ReactElement {
  return (
    <div className="side-by-side">
      <SelectField name="task" label={words.task} key={fields.task} defaultValue={fields.task}>
        <option value="mate">{words['task-mate']}</option>
        <option value="win">{words['task-win']}</option>
        <option value="draw">{words['task-draw']}</option>
      </SelectField>
      <TextField
        name="moves"
        label={words.moves}
        defaultValue={fields.moves}
        type="number"
        min={1}
        max={30}
      />
    </div>
  );
}

export function TitleField({ words, fields }: Input): ReactElement {
  return (
    <TextField
      name="title"
      label={words.title}
      hint={words['title-hint']}
      defaultValue={fields.title}
      maxLength={120}
    />
  );
}

const TICKS = {
  'mate-written': 'mateWritten',
  'any-defence': 'anyDefence',
  strict: 'isStrict',
  'counts-first': 'countsFirst',
} as const;

interface MoreInput extends Input {
  readonly ticks: readonly (keyof typeof TICKS)[];
  readonly children?: ReactNode;
}

/** The terms that most puzzles leave as they are. */
export function MoreTerms({ words, fields, ticks, children }: MoreInput): ReactElement {
  return (
    <details>
      <summary>{words.more}</summary>
      <div className="stack">
        <TextField
          name="howFar"
          label={words['how-far']}
          hint={words['how-far-hint']}
          defaultValue={fields.howFar}
          maxLength={200}
        />
        <TextField
          name="solverMoves"
          label={words['solver-moves']}
          hint={words['solver-moves-hint']}
          defaultValue={fields.solverMoves}
          type="number"
          min={1}
          max={99}
        />
        <div>
          {ticks.map((tick) => (
            <label key={tick} className="choice">
              <input type="checkbox" name={TICKS[tick]} defaultChecked={fields[TICKS[tick]] !== undefined} />
              <span>{words[tick]}</span>
            </label>
          ))}
        </div>
        {children}
      </div>
    </details>
  );
}
