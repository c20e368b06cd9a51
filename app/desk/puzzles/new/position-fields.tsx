import type { ReactElement } from 'react';
import { AreaField, SelectField } from '../../_parts/field.tsx';
import type { FormWords } from './form-words.ts';
import type { PuzzleFormState } from './puzzle-form-state.ts';

interface Input {
  readonly words: FormWords;
  readonly fields: Readonly<Record<string, string>>;
  readonly look: PuzzleFormState['look'];
  readonly isPending: boolean;
  /** What the last look was refused for; it stands at the button that was pressed. */
  readonly problem: string | null;
}

/** Position and published solution, and the button that looks at them. */
export function PositionFields({ words, fields, look, isPending, problem }: Input): ReactElement {
  return (
    <div className="head stack">
      <AreaField
        name="position"
        label={words.position}
        hint={words['position-hint']}
        className="field code"
        rows={3}
        required
        spellCheck={false}
        defaultValue={fields.position}
      />
      {look !== null && look.plies.length > 0 ? (
        <SelectField name="ply" label={words.ply} key={look.ply} defaultValue={String(look.ply)}>
          {look.plies.map(({ ply, label }) => (
            <option key={ply} value={ply}>
              {label}
            </option>
          ))}
        </SelectField>
      ) : null}
      <div>
        <AreaField
          name="published"
          label={words.published}
          hint={words['published-hint']}
          rows={2}
          defaultValue={fields.published}
        />
        {look === null ? null : (
          <ul className="read-lines" aria-live="polite">
            {look.lines.map(({ text, read }) => (
              <li key={text}>{read}</li>
            ))}
          </ul>
        )}
      </div>
      <Problem problem={problem} />
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

/** Why it was refused, if it was. */
export function Problem({ problem }: { problem: string | null }): ReactElement | null {
  if (problem === null || problem === '') return null;
  return (
    <p className="problem" role="alert">
      {problem}
    </p>
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
