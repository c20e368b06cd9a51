// A real worker process on a test database.

import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { PROJECT } from './start-database.ts';

/** A worker and what it said. */
export interface WorkerProcess {
  readonly child: ChildProcess;
  /** Resolves when a line of its log holds the text; rejects when it ends before. */
  waitFor(text: string): Promise<void>;
  /** All lines so far. */
  lines(): readonly string[];
  /** SIGKILL, and gone when this resolves. */
  kill(): Promise<void>;
  /** Asked to end in order. */
  stop(): Promise<void>;
}

/** Starts a worker. */
export function startWorker(
  database: { readonly url: string; readonly dataDir: string },
  env: Readonly<Record<string, string>> = {},
): WorkerProcess {
  const child = spawn(process.execPath, [join(PROJECT, 'lib/jobs/worker.ts')], {
    cwd: PROJECT,
    env: {
      ...process.env,
      DATABASE_URL: database.url,
      DATA_DIR: database.dataDir,
      TAILPIECE_LOG_LEVEL: 'info',
      ENGINE_THREADS: '2',
      NODE_OPTIONS: '',
      ...env,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const lines: string[] = [];
  const waiting = new Set<() => void>();
  const hear = (chunk: Buffer) => {
    lines.push(...chunk.toString().split('\n').filter(Boolean));
    for (const look of waiting) look();
  };
  child.stdout?.on('data', hear);
  child.stderr?.on('data', hear);
  const ended = new Promise<void>((resolve) => {
    child.once('exit', () => {
      resolve();
      for (const look of waiting) look();
    });
  });
  return {
    child,
    lines: () => lines,
    waitFor: (text) =>
      new Promise((resolve, reject) => {
        const look = () => {
          if (lines.some((line) => line.includes(text))) {
            waiting.delete(look);
            resolve();
          } else if (child.exitCode !== null || child.signalCode !== null) {
            waiting.delete(look);
            reject(new Error(`The worker ended before it said "${text}":\n${lines.slice(-10).join('\n')}`));
          }
        };
        waiting.add(look);
        look();
      }),
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
    stop: async () => {
      child.kill('SIGTERM');
      await ended;
    },
  };
}
