'use client';

import { type ReactElement, type ReactNode, useActionState } from 'react';
import { type FormAction, UNSENT } from './form-state.ts';

interface Input {
  readonly action: FormAction;
  readonly submit: string;
  readonly children?: ReactNode;
  readonly className?: string;
  /** The lesser deed beside the one that counts. */
  readonly isPlain?: boolean;
}

/** A form of one deed: its fields, one button, and what came of it. Works without scripts too. */
export function ActionForm({ action, submit, children, className, isPlain }: Input): ReactElement {
  const [state, send, isPending] = useActionState(action, UNSENT);
  return (
    <form action={send} className={className ?? 'stack'}>
      {children}
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
      <button type="submit" className={isPlain ? 'button-plain' : undefined} aria-disabled={isPending}>
        {submit}
      </button>
    </form>
  );
}
