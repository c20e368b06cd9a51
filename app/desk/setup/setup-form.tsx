'use client';

import { type ReactElement, useActionState, useEffect, useRef } from 'react';
import { SelectField, TextField } from '../_parts/field.tsx';
import { type FormAction, UNSENT } from '../_parts/form-state.ts';

interface Input {
  readonly action: FormAction;
  readonly words: Readonly<
    Record<
      | 'code'
      | 'codeHint'
      | 'show'
      | 'zone'
      | 'language'
      | 'name'
      | 'nameHint'
      | 'password'
      | 'passwordHint'
      | 'submit',
      string
    >
  >;
  readonly zones: readonly string[];
  readonly locale: string;
}

/** The claim of a first start. The code comes in the address behind the #, which no server ever sees. */
export function SetupForm({ action, words, zones, locale }: Input): ReactElement {
  const [state, send, isPending] = useActionState(action, UNSENT);
  const code = useRef<HTMLInputElement>(null);
  const zone = useRef<HTMLSelectElement>(null);
  useEffect(() => {
    const token = window.location.hash.slice(1);
    if (token !== '' && code.current !== null) {
      code.current.value = token;
      window.history.replaceState(null, '', window.location.pathname);
    }
    const own = Intl.DateTimeFormat().resolvedOptions().timeZone;
    if (zone.current?.value === 'UTC' && zones.includes(own)) zone.current.value = own;
  }, [zones]);
  const typed = (name: string): string => state.fields[name] ?? '';
  return (
    <form action={send} className="stack">
      {state.problem === null ? null : (
        <p className="problem" role="alert">
          {state.problem}
        </p>
      )}
      <TextField
        name="code"
        label={words.code}
        hint={words.codeHint}
        ref={code}
        className="field code"
        required
        autoComplete="off"
        defaultValue={typed('code')}
      />
      <TextField name="show" label={words.show} required maxLength={40} defaultValue={typed('show')} />
      <SelectField name="zone" label={words.zone} ref={zone} defaultValue={typed('zone') || 'UTC'}>
        {zones.map((one) => (
          <option key={one}>{one}</option>
        ))}
      </SelectField>
      <SelectField name="language" label={words.language} defaultValue={typed('language') || locale}>
        <option value="en">English</option>
        <option value="de">Deutsch</option>
      </SelectField>
      <TextField
        name="name"
        label={words.name}
        hint={words.nameHint}
        required
        autoComplete="username"
        autoCapitalize="none"
        maxLength={40}
        defaultValue={typed('name')}
      />
      <TextField
        name="password"
        label={words.password}
        hint={words.passwordHint}
        type="password"
        required
        autoComplete="new-password"
        minLength={12}
        maxLength={200}
      />
      <button type="submit" aria-disabled={isPending}>
        {words.submit}
      </button>
    </form>
  );
}
