// A process of ours that is started again when it ends, with growing pauses, and given up after five
// quick deaths. Detached, so that only the supervisor signals it; it ends by itself when the channel
// to the supervisor breaks.

import { type ChildProcess, spawn } from 'node:child_process';
import { openSync } from 'node:fs';

export interface ChildWishes {
  readonly name: string;
  readonly script: string;
  readonly env: Readonly<Record<string, string>>;
  readonly logFile: string;
  readonly say: (line: string) => void;
  readonly giveUp: (name: string) => void;
}

const QUICK_MS = 10_000;

/** A watched process. */
export interface WatchedChild {
  /** Resolves when the process has said that it is ready for the first time. */
  readonly ready: Promise<void>;
  pid(): number | null;
  /** Asks it to end, insists after `patienceMs`. */
  stop(patienceMs: number): Promise<void>;
}

/** Starts a process and keeps it running. */
export function watchChild(wishes: ChildWishes): WatchedChild {
  let child: ChildProcess | null = null;
  let quickDeaths = 0;
  let isStopping = false;
  let announceReady = () => {};
  const ready = new Promise<void>((resolve) => {
    announceReady = resolve;
  });

  const begin = () => {
    const started = Date.now();
    const log = openSync(wishes.logFile, 'a', 0o600);
    const next = spawn(process.execPath, [wishes.script], {
      env: { ...process.env, ...wishes.env },
      detached: true,
      stdio: ['ignore', log, log, 'ipc'],
    });
    child = next;
    next.on('message', (message) => {
      if (message === 'ready') announceReady();
    });
    next.once('exit', (code, signal) => {
      child = null;
      if (isStopping) return;
      quickDeaths = Date.now() - started < QUICK_MS ? quickDeaths + 1 : 1;
      if (quickDeaths >= 5) return wishes.giveUp(wishes.name);
      const pauseMs = 250 * 2 ** (quickDeaths - 1);
      wishes.say(`The ${wishes.name} process ended (${signal ?? `status ${code}`}); starting it again.`);
      setTimeout(() => {
        if (!isStopping) begin();
      }, pauseMs);
    });
  };
  begin();

  return {
    ready,
    pid: () => child?.pid ?? null,
    stop: (patienceMs) => {
      isStopping = true;
      const ending = child;
      if (ending === null || ending.exitCode !== null) return Promise.resolve();
      return new Promise((resolve) => {
        const insist = setTimeout(() => ending.kill('SIGKILL'), patienceMs);
        ending.once('exit', () => {
          clearTimeout(insist);
          resolve();
        });
        ending.kill('SIGTERM');
      });
    },
  };
}
