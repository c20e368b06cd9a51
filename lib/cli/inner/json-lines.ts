// Commands that answer each line of standard input with a line: a malformed one is answered with its number
// and what is wrong, reading goes on, and the exit status is 2 at the end.

import { ok, type Result, refuse } from '#lib/kit/result.ts';
import { LONGEST_LINE, textLines } from '#lib/machine/text-lines.ts';
import { answer } from './output.ts';

/** A JSON object of one line. */
export type Fields = Readonly<Record<string, unknown>>;

/**
 * Answers every line of standard input in its order; the next line is read when the answer has been taken.
 * `answerLine` gives the answer or a line that says which field is wrong. The exit status: 0, or 2.
 */
export async function answerLines(answerLine: (fields: Fields) => Result<unknown, string>): Promise<number> {
  let status = 0;
  for await (const read of textLines(process.stdin)) {
    const result = 'fault' in read ? refuse(faultSentence(read.fault)) : parseLine(read.text, answerLine);
    if (!result.ok) status = 2;
    await answer(result.ok ? result.value : { line: read.line, error: result.reason });
  }
  return status;
}

function parseLine(
  text: string,
  answerLine: (fields: Fields) => Result<unknown, string>,
): Result<unknown, string> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return refuse(
      text.trim() === ''
        ? 'expected a JSON object, found an empty line'
        : `expected a JSON object, found "${text.slice(0, 60)}"`,
    );
  }
  if (!isFields(value)) return refuse(`expected a JSON object, found ${JSON.stringify(value).slice(0, 60)}`);
  return answerLine(value);
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function faultSentence(fault: 'too-long' | 'not-utf8'): string {
  return fault === 'too-long' ? `expected a line of at most ${LONGEST_LINE} bytes` : 'expected UTF-8 text';
}

/** A field that must be text. */
export function textField(fields: Fields, name: string): Result<string, string> {
  const value = fields[name];
  if (typeof value === 'string') return ok(value);
  return refuse(
    `"${name}": expected a text, found ${value === undefined ? 'nothing' : JSON.stringify(value).slice(0, 60)}`,
  );
}

/** The name that comes back with the answer: a text or a number. */
export function idField(fields: Fields): Result<string | number, string> {
  const { id } = fields;
  if (typeof id === 'string' || typeof id === 'number') return ok(id);
  return refuse(
    `"id": expected a text or a number, found ${id === undefined ? 'nothing' : JSON.stringify(id).slice(0, 60)}`,
  );
}
