'use client';

import {
  type KeyboardEvent,
  type ReactElement,
  type ReactNode,
  useActionState,
  useEffect,
  useRef,
  useState,
} from 'react';
import { type FormAction, UNSENT } from '../../../_parts/form-state.ts';

interface Input {
  readonly action: FormAction;
  readonly words: Readonly<Record<'keysOn' | 'keysHint' | 'list', string>>;
  readonly children: ReactNode;
}

const SWITCH = 'tailpiece.keys-off';

/** A form whose buttons answer to one key each; the keys work only while the list has the focus, and can be switched off. */
export function KeyForm({ action, words, children }: Input): ReactElement {
  const [state, send, isPending] = useActionState(action, UNSENT);
  const [hasKeys, setHasKeys] = useState(true);
  const list = useRef<HTMLFieldSetElement>(null);
  useEffect(() => {
    setHasKeys(window.localStorage.getItem(SWITCH) === null);
    list.current?.focus({ preventScroll: true });
  }, []);
  const onKey = (event: KeyboardEvent): void => {
    if (!hasKeys || isPending || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement) {
      // Out of a field and back to the keys.
      if (event.key === 'Escape') list.current?.focus({ preventScroll: true });
      return;
    }
    const wanted = event.key.toLowerCase();
    const hit = [...(list.current?.querySelectorAll<HTMLElement>('[data-key]') ?? [])].find(
      (one) => one.dataset.key === wanted,
    );
    if (hit === undefined) return;
    event.preventDefault();
    if (hit instanceof HTMLInputElement || hit instanceof HTMLTextAreaElement) hit.focus();
    else hit.click();
  };
  const onSwitch = (isOn: boolean): void => {
    setHasKeys(isOn);
    if (isOn) window.localStorage.removeItem(SWITCH);
    else window.localStorage.setItem(SWITCH, 'yes');
  };
  return (
    <form action={send}>
      <fieldset ref={list} tabIndex={-1} className="key-list" aria-label={words.list} onKeyDown={onKey}>
        {children}
      </fieldset>
      {state.problem === null ? null : (
        <p className="problem" role="alert">
          {state.problem}
        </p>
      )}
      <label className="choice key-switch">
        <input type="checkbox" checked={hasKeys} onChange={(event) => onSwitch(event.target.checked)} />
        <span>
          {words.keysOn} <span className="quiet">{words.keysHint}</span>
        </span>
      </label>
    </form>
  );
}
