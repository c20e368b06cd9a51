// Runs the real command line as a process of its own.

import { spawn } from 'node:child_process';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '..', '..');

/** What a run left behind. */
export interface Run {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs a command; `input` is its standard input, whole or in chunks as fast as they are taken. */
export async function tailpiece(
  words: readonly string[],
  input: string | Iterable<string> = '',
): Promise<Run> {
  const child = startTailpiece(words);
  let out = '';
  let err = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    out += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    err += text;
  });
  // A command that refuses its arguments does not read its input.
  child.stdin.on('error', () => {});
  child.stdin.end(typeof input === 'string' ? input : [...input].join(''));
  const status = await new Promise<number | null>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', resolve);
  });
  return { status, out, err };
}

/** Starts a command with pipes on all three streams. */
export function startTailpiece(words: readonly string[]) {
  return spawn(process.execPath, [join(ROOT, 'lib/cli/main.mjs'), ...words], { cwd: ROOT });
}

/** The lines of an output, each parsed. */
export function jsonLines(text: string): unknown[] {
  return text
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line));
}
