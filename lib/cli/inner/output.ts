// Where answers and complaints go.

import { once } from 'node:events';

/** Writes one answer as a line of JSON, and waits where the reader is slower than we are. */
export async function answer(value: unknown): Promise<void> {
  await writeText(`${JSON.stringify(value)}\n`);
}

/** Writes text to standard output, and waits where the reader is slower than we are. */
export async function writeText(text: string): Promise<void> {
  if (!process.stdout.write(text)) await once(process.stdout, 'drain');
}

/** One line on standard error. */
export function complain(text: string): void {
  process.stderr.write(`tailpiece: ${text}\n`);
}
