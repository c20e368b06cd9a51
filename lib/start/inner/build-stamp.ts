// Skips a build step whose inputs have not changed: a hash over files and settings, kept in .cache/.

import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** What a step is made from and what it leaves behind. Paths are relative to `root`. */
export interface BuildInputs {
  readonly root: string;
  readonly name: string;
  readonly files: readonly string[];
  readonly outputs: readonly string[];
  /** Anything else that changes the result: a version, an option. */
  readonly salt?: string;
}

/** A hash over the content of every input file, its name included. */
export function hashInputs(inputs: BuildInputs): string {
  const hash = createHash('sha256').update(inputs.salt ?? '');
  for (const file of [...inputs.files].sort()) {
    hash.update(`\0${file}\0`).update(readFileSync(join(inputs.root, file)));
  }
  return hash.digest('hex');
}

/** Runs `step` unless the same inputs have already left all outputs; tells whether it ran. */
export async function buildOnce(inputs: BuildInputs, step: () => Promise<void> | void): Promise<boolean> {
  const stamp = join(inputs.root, '.cache', 'built', inputs.name);
  const hash = hashInputs(inputs);
  const isFresh =
    existsSync(stamp) &&
    readFileSync(stamp, 'utf8') === hash &&
    inputs.outputs.every((file) => existsSync(join(inputs.root, file)));
  if (isFresh) {
    // Files may be newer than the stamp and yet the same: whoever compares times asks only once.
    const now = new Date();
    utimesSync(stamp, now, now);
    return false;
  }
  await step();
  mkdirSync(dirname(stamp), { recursive: true });
  writeFileSync(stamp, hash);
  return true;
}
