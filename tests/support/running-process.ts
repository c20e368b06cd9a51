// Is a process at work?

import { readFileSync } from 'node:fs';

/** False for one that has gone, and for one that has ended and waits for its parent to look. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return !readFileSync(`/proc/${pid}/stat`, 'utf8').includes(') Z ');
  } catch {
    return false;
  }
}
