/** What a form of the desk shows after it was sent: a problem or a note, and the fields as they were typed. */
export interface FormState {
  readonly problem: string | null;
  readonly note: string | null;
  readonly fields: Readonly<Record<string, string>>;
}

export const UNSENT: FormState = { problem: null, note: null, fields: {} };

/** An action that a form of the desk calls. */
export type FormAction = (before: FormState, form: FormData) => Promise<FormState>;

/** The form again, with a problem and what was typed; passwords are not sent back. */
export function problemState(problem: string, form: FormData): FormState {
  const fields: Record<string, string> = {};
  for (const [name, value] of form) {
    if (typeof value === 'string' && !name.startsWith('$') && !/password/i.test(name)) fields[name] = value;
  }
  return { problem, note: null, fields };
}

/** A note that it was done. */
export function noteState(note: string): FormState {
  return { problem: null, note, fields: {} };
}

/** One text field of a form; empty where it is missing or a file. */
export function textOf(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === 'string' ? value : '';
}
