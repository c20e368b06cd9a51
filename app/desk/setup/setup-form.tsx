'use client';

import { type ReactElement, useActionState, useEffect, useRef } from 'react';
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
      <div>
        <label htmlFor="code">{words.code}</label>
        <input
          ref={code}
          id="code"
          name="code"
          className="field code"
          required
          autoComplete="off"
          defaultValue={typed('code')}
          aria-describedby="code-hint"
        />
        <p className="hint" id="code-hint">
          {words.codeHint}
        </p>
      </div>
      <div>
        <label htmlFor="show">{words.show}</label>
        <input id="show" name="show" className="field" required maxLength={80} defaultValue={typed('show')} />
      </div>
      <div>
        <label htmlFor="zone">{words.zone}</label>
        <select ref={zone} id="zone" name="zone" defaultValue={typed('zone') || 'UTC'}>
          {zones.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </div>
      <div>
        <label htmlFor="language">{words.language}</label>
        <select id="language" name="language" defaultValue={typed('language') || locale}>
          <option value="en">English</option>
          <option value="de">Deutsch</option>
        </select>
      </div>
      <div>
        <label htmlFor="name">{words.name}</label>
        <input
          id="name"
          name="name"
          className="field"
          required
          autoComplete="username"
          autoCapitalize="none"
          maxLength={40}
          defaultValue={typed('name')}
          aria-describedby="name-hint"
        />
        <p className="hint" id="name-hint">
          {words.nameHint}
        </p>
      </div>
      <div>
        <label htmlFor="password">{words.password}</label>
        <input
          id="password"
          name="password"
          type="password"
          className="field"
          required
          autoComplete="new-password"
          minLength={12}
          maxLength={200}
          aria-describedby="password-hint"
        />
        <p className="hint" id="password-hint">
          {words.passwordHint}
        </p>
      </div>
      <button type="submit" aria-disabled={isPending}>
        {words.submit}
      </button>
    </form>
  );
}
