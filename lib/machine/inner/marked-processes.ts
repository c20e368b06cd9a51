// Ends what a program has left behind, wherever it has gone: every process inherits the environment of the
// one that started it, and with it a mark that no other process has. The mark names its owner too, so that
// what a killed worker could not end is found by the next one.

import { randomUUID } from 'node:crypto';
import { readdirSync, readFileSync, readlinkSync } from 'node:fs';

/** A process may start another while it is being ended; so many times it is looked again. */
const MOST_ROUNDS = 5;
/** What every mark begins with; then the owner's number, when it began, and a word of its own. */
const NAME = 'UCI_QUESTION';
const MARK = new RegExp(`^${NAME}=tailpiece-(\\d+)-(\\d+)-[0-9a-f-]{36}$`);

/** A new mark in the name of this process, as a name and its value. */
export function newMark(): { readonly name: string; readonly value: string } {
  return { name: NAME, value: `tailpiece-${process.pid}-${beginOf(process.pid) ?? 0}-${randomUUID()}` };
}

/** Kills every process whose environment holds the mark. Where the system shows none (no /proc), it does nothing. */
export function killMarked({ name, value }: ReturnType<typeof newMark>): void {
  const mark = `${name}=${value}`;
  killAll((entries) => entries.includes(mark));
}

/** Kills every marked process whose owner has gone; gives how many. Does nothing where the system shows no processes. */
export function killForsaken(): number {
  return killAll((entries, pid) => {
    const [, owner = '', begun = ''] =
      entries.map((entry) => MARK.exec(entry)).find((found) => found !== null) ?? [];
    // The number of a process that has gone may be another's by now, but not with the same beginning. In
    // another container the numbers mean other processes.
    return owner !== '' && beginOf(Number(owner)) !== begun && spaceOf(pid) === spaceOf(process.pid);
  });
}

function killAll(isMeant: (entries: readonly string[], pid: number) => boolean): number {
  const killed = new Set<number>();
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const meant = processIds().filter((pid) => isMeant(environmentOf(pid), pid));
    if (meant.length === 0) break;
    for (const pid of meant) {
      kill(pid);
      killed.add(pid);
    }
  }
  return killed.size;
}

function processIds(): number[] {
  try {
    return readdirSync('/proc').map(Number).filter(Number.isInteger);
  } catch {
    return [];
  }
}

function environmentOf(pid: number): string[] {
  try {
    return readFileSync(`/proc/${pid}/environ`, 'latin1').split('\0');
  } catch {
    // It has gone, or it belongs to somebody else.
    return [];
  }
}

/** When a process began, in ticks since the system did; null where there is none. */
function beginOf(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'latin1');
    // The second field is a name, which may hold anything, brackets too; what was killed and is not yet
    // looked at by its parent does nothing any more.
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    return fields[0] === 'Z' ? null : (fields[19] ?? null);
  } catch {
    return null;
  }
}

function spaceOf(pid: number): string | null {
  try {
    return readlinkSync(`/proc/${pid}/ns/pid`);
  } catch {
    return null;
  }
}

function kill(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL');
  } catch {
    // It has gone.
  }
}
