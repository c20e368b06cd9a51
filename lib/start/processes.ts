// Is a process alive, and what is it? Asked of the system, because a pid file may be stale.

import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';

/** Alive and no zombie: a zombie answers signals although nothing runs any more. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'EPERM')) return false;
  }
  const stat = `/proc/${pid}/stat`;
  if (!existsSync('/proc/self/stat')) return true;
  try {
    const text = readFileSync(stat, 'utf8');
    return text.slice(text.lastIndexOf(')') + 2)[0] !== 'Z';
  } catch {
    return false;
  }
}

/** The command line of a process, or "" where it cannot be told. */
export function commandOf(pid: number): string {
  try {
    if (existsSync(`/proc/${pid}/cmdline`))
      return readFileSync(`/proc/${pid}/cmdline`, 'utf8').replaceAll('\0', ' ');
    return execFileSync('ps', ['-p', String(pid), '-o', 'command='], { encoding: 'utf8' });
  } catch {
    return '';
  }
}

/** Resolves when the process is gone, or false after so many milliseconds. */
export async function waitForEnd(pid: number, patienceMs: number): Promise<boolean> {
  for (let waited = 0; waited < patienceMs; waited += 50) {
    if (!isAlive(pid)) return true;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return !isAlive(pid);
}
