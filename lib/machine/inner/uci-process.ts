// The process behind a UCI program: lines in and out, bounded in time and bytes, ended with all it started.

import { spawn } from 'node:child_process';
import { tmpdir } from 'node:os';
import { killMarked, newMark } from './marked-processes.ts';

/** What the program did: said a line, went over its time, ended, could not be started, or flooded us. */
export type UciEvent =
  | { readonly kind: 'line'; readonly text: string }
  | { readonly kind: 'late' }
  | { readonly kind: 'ended'; readonly status: number | null }
  | { readonly kind: 'failed'; readonly why: string }
  | { readonly kind: 'flood' };

/** A running program. After an event that is no line, every further event is the same. */
export interface UciProcess {
  send(line: string): void;
  next(): Promise<UciEvent>;
  /** Says `quit`, waits a moment, kills what is left: its process group, and what has left that group. */
  end(): Promise<void>;
}

/** More than any program has to say to one question, in bytes. */
const MOST_BYTES = 16_777_216;
/** Longer than any line of a search, in bytes. */
const LONGEST_LINE = 65_536;
/** More lines than that are none of a search; many short ones would cost far more memory than their bytes. */
const MOST_LINES = 100_000;
/** How long a program may take to leave after `quit`. */
const FAREWELL_MS = 300;

/**
 * Starts a program in a process group of its own, with an environment that holds none of our settings and with
 * the folder for temporary files as its own. It is killed after `killAfterMs`.
 */
export function startUciProcess(
  program: { readonly path: string; readonly args: readonly string[] },
  killAfterMs: number,
): UciProcess {
  const mark = newMark();
  const child = spawn(program.path, [...program.args], {
    cwd: tmpdir(),
    detached: true,
    env: { PATH: process.env.PATH ?? '', NODE_ENV: 'production', [mark.name]: mark.value },
    stdio: ['pipe', 'pipe', 'ignore'],
    windowsHide: true,
  });
  const events = eventQueue();
  const killer = setTimeout(() => {
    events.finish({ kind: 'late' });
    killGroup(child.pid);
  }, killAfterMs);
  // Writing to a program that has gone is told by its end.
  child.stdin.on('error', () => {});
  child.once('error', (error) => events.finish({ kind: 'failed', why: error.message }));
  child.once('close', (status) => events.finish({ kind: 'ended', status }));
  // Not `close`: a process that it left behind may hold its output open.
  const hasEnded = new Promise<void>((resolve) => {
    child.once('exit', () => resolve());
    child.once('error', () => resolve());
  });
  readLines(
    child.stdout,
    (text) => events.push({ kind: 'line', text }),
    () => {
      events.finish({ kind: 'flood' });
      child.stdout.destroy();
    },
  );
  return {
    send: (line) => {
      if (child.stdin.writable) child.stdin.write(`${line}\n`);
    },
    next: events.next,
    async end() {
      if (child.stdin.writable) child.stdin.end('quit\n');
      const farewell = setTimeout(() => killGroup(child.pid), FAREWELL_MS);
      await hasEnded;
      clearTimeout(farewell);
      clearTimeout(killer);
      // What the program started may live on after it; the group is asked once more, and who left it is found.
      killGroup(child.pid);
      killMarked(mark);
      child.stdout.destroy();
    },
  };
}

function readLines(stdout: NodeJS.ReadableStream, say: (line: string) => void, flood: () => void): void {
  let rest = '';
  let bytes = 0;
  let count = 0;
  stdout.on('data', (chunk: Buffer) => {
    bytes += chunk.length;
    rest += chunk.toString('latin1');
    const lines = rest.split('\n');
    rest = lines.pop() ?? '';
    count += lines.length;
    if (bytes > MOST_BYTES || count > MOST_LINES || rest.length > LONGEST_LINE) {
      rest = '';
      flood();
      return;
    }
    for (const line of lines) say(line.trim());
  });
}

/** Lines wait here until they are asked for; the first other event ends the queue and comes ever after. */
function eventQueue() {
  const lines: UciEvent[] = [];
  let last: UciEvent | null = null;
  let waiting: ((event: UciEvent) => void) | null = null;
  const wake = (): void => {
    const event = lines[0] ?? last;
    if (waiting === null || event === null) return;
    lines.shift();
    waiting(event);
    waiting = null;
  };
  return {
    push(event: UciEvent): void {
      if (last === null) lines.push(event);
      wake();
    },
    finish(event: UciEvent): void {
      last ??= event;
      wake();
    },
    next: (): Promise<UciEvent> =>
      new Promise((resolve) => {
        waiting = resolve;
        wake();
      }),
  };
}

function killGroup(pid: number | undefined): void {
  if (pid === undefined) return;
  try {
    process.kill(-pid, 'SIGKILL');
  } catch {
    // The group has gone already.
  }
}
