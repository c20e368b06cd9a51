// A program that can be named by its path alone, as an operator does it.

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROJECT } from '../start-database.ts';

/** Our own engine behind the protocol, as an executable file in the folder. */
export function ownEngineIn(folder: string): string {
  return writeProgram(folder, 'own-engine', `'${join(PROJECT, 'lib/cli/main.mjs')}' uci`);
}

/** The odd program with one fault, as an executable file in the folder. */
export function oddProgramIn(folder: string, fault: string): string {
  return writeProgram(folder, `odd-${fault}`, `'${join(import.meta.dirname, 'odd-program.mjs')}' ${fault}`);
}

function writeProgram(folder: string, name: string, words: string): string {
  const path = join(folder, name);
  writeFileSync(path, `#!/bin/sh\nexec '${process.execPath}' ${words}\n`, { mode: 0o755 });
  return path;
}
