// Who this process is, and whether another on this machine is alive.

import { randomBytes } from 'node:crypto';
import { hostname } from 'node:os';

/** A name for this process that no other has: machine, number and a random end. */
export function processName(): string {
  return `${hostname()}/${process.pid}/${randomBytes(4).toString('hex')}`;
}

/** Is the named process known to be dead? Only said of processes of this machine. */
export function isKnownDead(name: string): boolean {
  const [host, pid] = name.split('/');
  if (host !== hostname() || pid === undefined) return false;
  try {
    process.kill(Number(pid), 0);
    return false;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'ESRCH';
  }
}
