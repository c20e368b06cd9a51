// Files that an option names, seen from the folder in which the command was given.

import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { ok, type Result, refuse } from '#lib/kit/result.ts';

/** The text of a file named by an option, or a line that says why there is none. */
export function readTextFile(name: string, path: string): Result<string, string> {
  // npm runs scripts in the project's folder and keeps the caller's own in INIT_CWD.
  const place = resolve(process.env.INIT_CWD ?? '.', path);
  try {
    return ok(new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(place)));
  } catch (error) {
    const why =
      error instanceof TypeError ? 'it is not UTF-8 text' : error instanceof Error ? error.message : '';
    return refuse(`--${name}: cannot read "${path}": ${why}`);
  }
}
