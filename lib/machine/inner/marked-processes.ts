// Ends what a program has left behind, wherever it has gone: every process inherits the environment of the
// one that started it, and with it a mark that no other process has.

import { readdirSync, readFileSync } from 'node:fs';

/** A process may start another while it is being ended; so many times it is looked again. */
const MOST_ROUNDS = 5;

/** Kills every process whose environment holds the mark. Where the system shows none (no /proc), it does nothing. */
export function killMarked(mark: string): void {
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const marked = processIds().filter((pid) => holds(pid, mark));
    if (marked.length === 0) return;
    for (const pid of marked) kill(pid);
  }
}

function processIds(): number[] {
  try {
    return readdirSync('/proc').map(Number).filter(Number.isInteger);
  } catch {
    return [];
  }
}

function holds(pid: number, mark: string): boolean {
  try {
    return readFileSync(`/proc/${pid}/environ`, 'latin1').split('\0').includes(mark);
  } catch {
    // It has gone, or it belongs to somebody else.
    return false;
  }
}

function kill(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL');
  } catch {
    // It has gone.
  }
}
