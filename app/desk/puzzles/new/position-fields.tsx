import type { ReactElement } from 'react';
import type { FormWords } from './form-words.ts';
import type { PuzzleFormState } from './puzzle-form-state.ts';

interface Input {
  readonly words: FormWords;
  readonly fields: Readonly<Record<string, string>>;
  readonly look: PuzzleFormState['look'];
  readonly isPending: boolean;
}

/** Position and published solution, and the button that looks at them. */
export function PositionFields({ words, fields, look, isPending }: Input): ReactElement {
  return (
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
  );
}

/** The diagram of what was looked at. */
export function LookPlate({ look, empty }: { look: PuzzleFormState['look']; empty: string }): ReactElement {
  return (
    <div className="plate">
      {look === null ? (
        <p className="plate-empty">{empty}</p>
      ) : (
        <figure>
          {/* Drawn by our own server from a position that was read. */}
          {/* biome-ignore lint/security/noDangerouslySetInnerHtml: SVG text of the diagram renderer */}
          <div dangerouslySetInnerHTML={{ __html: look.svg }} />
          <figcaption>{look.caption}</figcaption>
        </figure>
      )}
    </div>
  );
}
