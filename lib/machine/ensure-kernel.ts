// Builds the engine's kernel where it is missing or older than its source, for programs that may run
// right after `npm ci`. The build itself is a door of its own and runs as a process.

import { spawn } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const ROOT = join(import.meta.dirname, '..', '..');
const SOURCE = join(ROOT, 'lib/engine/kernel');
const STAMP = join(ROOT, '.cache/built/kernel');
const OUTPUT = join(ROOT, 'lib/engine/inner/kernel-wasm.ts');

/** Resolves once the kernel is there; says so on standard error where it had to be built. Throws if that fails. */
export async function ensureKernel(): Promise<void> {
  if (isBuilt()) return;
  process.stderr.write('Building the engine kernel first (once) ...\n');
  const child = spawn(process.execPath, [join(ROOT, 'lib/start/build.ts'), 'kernel'], {
    cwd: ROOT,
    // Standard output belongs to the answers of the command.
    stdio: ['ignore', 2, 2],
  });
  const code = await new Promise<number | null>((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', resolve);
  });
  if (code !== 0) throw new Error(`The engine kernel could not be built (exit status ${code})`);
}

function isBuilt(): boolean {
  if (!existsSync(STAMP) || !existsSync(OUTPUT)) return false;
  const builtAt = statSync(STAMP).mtimeMs;
  return readdirSync(SOURCE, { recursive: true, encoding: 'utf8' })
    .map((file) => statSync(join(SOURCE, file)))
    .every((file) => file.isDirectory() || file.mtimeMs <= builtAt);
}
