import type { ComponentProps, ReactElement, ReactNode } from 'react';

interface Named {
  readonly name: string;
  readonly label: ReactNode;
  /** A sentence below the field, read out with it. */
  readonly hint?: string | undefined;
  /** Where a page has the name twice; else the name. */
  readonly id?: string | undefined;
}

/** A label above its input, a hint below it. */
export function TextField({
  name,
  label,
  hint,
  id = name,
  ...more
}: Named & ComponentProps<'input'>): ReactElement {
  return (
    <Labelled id={id} label={label} hint={hint}>
      <input id={id} name={name} className="field" {...described(id, hint)} {...more} />
    </Labelled>
  );
}

/** The same for several lines of text. */
export function AreaField({
  name,
  label,
  hint,
  id = name,
  ...more
}: Named & ComponentProps<'textarea'>): ReactElement {
  return (
    <Labelled id={id} label={label} hint={hint}>
      <textarea id={id} name={name} className="field" {...described(id, hint)} {...more} />
    </Labelled>
  );
}

/** The same for a choice from a list; its options are the children. */
export function SelectField({
  name,
  label,
  hint,
  id = name,
  ...more
}: Named & ComponentProps<'select'>): ReactElement {
  return (
    <Labelled id={id} label={label} hint={hint}>
      <select id={id} name={name} {...described(id, hint)} {...more} />
    </Labelled>
  );
}

interface LabelledInput {
  readonly id: string;
  readonly label: ReactNode;
  readonly hint: string | undefined;
  readonly children: ReactNode;
}

function Labelled({ id, label, hint, children }: LabelledInput): ReactElement {
  return (
    <div>
      <label htmlFor={id}>{label}</label>
      {children}
      {hint === undefined ? null : (
        <p className="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
}

function described(id: string, hint: string | undefined): { 'aria-describedby'?: string } {
  return hint === undefined ? {} : { 'aria-describedby': `${id}-hint` };
}
