import type { ReactElement } from 'react';
import type { FormWords } from './form-words.ts';

interface Input {
  readonly words: FormWords;
  readonly fields: Readonly<Record<string, string>>;
  readonly zones: readonly string[];
}

/** Task, titles, times and terms of a puzzle. Keys make React take the values of a sent form over. */
export function TermsFields({ words, fields, zones }: Input): ReactElement {
  const text = (name: string, label: string, more: Readonly<Record<string, unknown>> = {}): ReactElement => (
    <div>
      <label htmlFor={name}>{label}</label>
      <input id={name} name={name} className="field" defaultValue={fields[name]} {...more} />
    </div>
  );
  const tick = (name: string, label: string): ReactElement => (
    <label className="choice">
      <input type="checkbox" name={name} defaultChecked={fields[name] !== undefined} />
      <span>{label}</span>
    </label>
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
      <div className="side-by-side">
        {text('episodeNumber', words['episode-number'], { type: 'number', min: 1, required: true })}
        {text('episodeTitle', words['episode-title'], { maxLength: 120, required: true })}
      </div>
      <div>
        {text('title', words.title, { maxLength: 120, 'aria-describedby': 'title-hint' })}
        <p className="hint" id="title-hint">
          {words['title-hint']}
        </p>
      </div>
      <div className="side-by-side">
        {text('opensAt', words.opens, { type: 'datetime-local', required: true })}
        {text('closesAt', words.closes, { type: 'datetime-local', required: true })}
      </div>
      <div>
        <label htmlFor="zone">{words.zone}</label>
        <select id="zone" name="zone" key={fields.zone} defaultValue={fields.zone}>
          {zones.map((zone) => (
            <option key={zone}>{zone}</option>
          ))}
        </select>
      </div>
      <fieldset>
        <legend>{words.scheme}</legend>
        {(['full-line', 'key-move'] as const).map((scheme) => (
          <label key={scheme} className="choice">
            <input type="radio" name="scheme" value={scheme} defaultChecked={fields.scheme === scheme} />
            <span>{words[`scheme-${scheme}`]}</span>
          </label>
        ))}
      </fieldset>
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
          {tick('countsFirst', words['counts-first'])}
        </div>
      </details>
    </>
  );
}
