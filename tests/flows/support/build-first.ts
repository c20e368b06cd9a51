// Runs once before all flows: files that start the program at the same moment find it built.

import { execFileSync } from 'node:child_process';
import { resolve } from 'node:path';

export default function buildFirst(): void {
  const project = resolve(import.meta.dirname, '../../..');
  execFileSync(process.execPath, ['lib/start/build.ts'], { cwd: project, stdio: 'inherit' });
}
