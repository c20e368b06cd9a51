// One supervisor a data folder: a second start says that the first runs, and where.

import { closeSync, mkdirSync, openSync, readFileSync, rmSync, writeFileSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';
import { z } from 'zod';
import { commandOf, isAlive } from './processes.ts';

const HELD = z.object({ pid: z.number().int(), publicUrl: z.string().nullable() });

/** Who holds the lock. */
export type Holder = z.infer<typeof HELD>;

function readHolder(file: string): Holder | null {
  try {
    const read = HELD.safeParse(JSON.parse(readFileSync(file, 'utf8')));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

/** Takes the lock, or tells who has it. A lock left by a dead process is taken over. */
export function takeLock(file: string, isOurs: (command: string) => boolean): Holder | null {
  mkdirSync(dirname(file), { recursive: true, mode: 0o711 });
  for (let tries = 0; ; tries += 1) {
    try {
      const handle = openSync(file, 'wx', 0o600);
      writeSync(handle, JSON.stringify({ pid: process.pid, publicUrl: null }));
      closeSync(handle);
      return null;
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST') || tries > 5) throw error;
    }
    const holder = readHolder(file);
    if (holder !== null && holder.pid !== process.pid && isAlive(holder.pid) && isOurs(commandOf(holder.pid)))
      return holder;
    rmSync(file, { force: true });
  }
}

/** Writes the address into our lock, for a second start to say. */
export function announceInLock(file: string, publicUrl: string): void {
  writeFileSync(file, JSON.stringify({ pid: process.pid, publicUrl }), { mode: 0o600 });
}

/** Gives the lock back, if it is ours. */
export function dropLock(file: string): void {
  if (readHolder(file)?.pid === process.pid) rmSync(file, { force: true });
}
