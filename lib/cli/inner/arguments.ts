// How the words behind a command become named values, or one line that names the field and what was expected.

import { ok, type Result, refuse } from '#lib/kit/result.ts';

/** One option of a command. */
export interface Option {
  readonly name: string;
  /** What it takes, for the usage and for complaints, as in "a FEN"; null for a switch without a value. */
  readonly takes: string | null;
  readonly isRequired?: boolean;
}

/** Values by option name; switches that were given are "". */
export type Values = ReadonlyMap<string, string>;

/** Parses `--name value`, `--name=value` and `--switch`; unknown, doubled, missing and surplus words are refused. */
export function parseArguments(options: readonly Option[], words: readonly string[]): Result<Values, string> {
  const values = new Map<string, string>();
  for (let at = 0; at < words.length; at += 1) {
    const [, name = '', attached] = /^--([a-z-]+)(?:=([\s\S]*))?$/.exec(words[at] ?? '') ?? [];
    const option = options.find((one) => one.name === name);
    if (option === undefined) return refuse(unknown(options, words[at] ?? ''));
    if (values.has(name)) return refuse(`--${name} is given twice`);
    if (option.takes === null) {
      if (attached !== undefined) return refuse(`--${name} takes no value`);
      values.set(name, '');
      continue;
    }
    if (attached === undefined) at += 1;
    const value = attached ?? words[at];
    if (value === undefined || value === '')
      return refuse(`--${name}: expected ${option.takes}, found nothing`);
    values.set(name, value);
  }
  const missing = options.find(({ name, isRequired }) => isRequired === true && !values.has(name));
  if (missing !== undefined) return refuse(`--${missing.name} is missing: expected ${missing.takes}`);
  return ok(values);
}

function unknown(options: readonly Option[], word: string): string {
  const known = options.map(({ name }) => `--${name}`).join(', ');
  return `"${word.slice(0, 60)}" is no option: expected ${known === '' ? 'none' : known}`;
}

/** The value of an option that has been required. */
export function required(values: Values, name: string): string {
  const value = values.get(name);
  if (value === undefined) throw new Error(`--${name} is not among the required options`);
  return value;
}

/** A whole number within bounds, or the line that says what was expected. */
export function wholeNumber(
  values: Values,
  name: string,
  { least, most }: { readonly least: number; readonly most: number },
): Result<number, string> {
  const text = required(values, name);
  const number = /^\d{1,12}$/.test(text) ? Number(text) : Number.NaN;
  if (number >= least && number <= most) return ok(number);
  return refuse(`--${name}: expected a whole number from ${least} to ${most}, found "${text.slice(0, 40)}"`);
}
