// The whole program as a host starts it: the real start script, its own database, web and worker,
// in a data folder of its own. For browser tests; loopback only.

import { spawn } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { join, resolve } from 'node:path';

/** A running program; `stop` ends every process of it and removes its data. */
export interface RunningApp {
  readonly origin: string;
  /** The desk's address with the one-time setup code; the bare desk where there is an owner. */
  readonly setupLink: string;
  readonly dataDir: string;
  readonly stop: () => Promise<void>;
}

const PROJECT = resolve(import.meta.dirname, '../..');
const START_MS = 300_000;

function freePort(): Promise<number> {
  return new Promise((done, fail) => {
    const server = createServer();
    server.once('error', fail);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() =>
        typeof address === 'object' && address ? done(address.port) : fail(new Error('no port')),
      );
    });
  });
}

/** Starts the program; `words` go to the start script (`--sample`). Builds first what is not built. */
export async function startRunningApp(words: readonly string[] = []): Promise<RunningApp> {
  mkdirSync(join(PROJECT, '.cache'), { recursive: true });
  const dataDir = mkdtempSync(join(PROJECT, '.cache', 'app-'));
  // The database's own user must be able to pass; else its files go to another place.
  chmodSync(dataDir, 0o711);
  const child = spawn(process.execPath, [join(PROJECT, 'lib/start/main.mjs'), ...words], {
    cwd: PROJECT,
    env: {
      ...process.env,
      DATA_DIR: dataDir,
      PORT: String(await freePort()),
      HOST: '127.0.0.1',
      FORCE_COLOR: '0',
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  const ended = new Promise<number | null>((done) => child.once('exit', done));
  const stop = async (): Promise<void> => {
    if (child.exitCode === null) child.kill('SIGTERM');
    await ended;
    rmSync(dataDir, { recursive: true, force: true });
  };
  const lines = new Promise<{ origin: string; setupLink: string }>((done, fail) => {
    const timer = setTimeout(
      () => fail(new Error(`not started within ${START_MS / 1000} s:\n${said}`)),
      START_MS,
    );
    const listen = (chunk: Buffer): void => {
      said += chunk.toString();
      const origin = /^Viewers:\s+(\S+)/m.exec(said)?.[1];
      const setupLink = /^Desk:\s+(\S+)/m.exec(said)?.[1];
      if (origin === undefined || setupLink === undefined) return;
      clearTimeout(timer);
      done({ origin, setupLink });
    };
    child.stdout.on('data', listen);
    child.stderr.on('data', listen);
    void ended.then((code) => {
      clearTimeout(timer);
      fail(new Error(`the start script ended with ${code}:\n${said}`));
    });
  });
  try {
    return { ...(await lines), dataDir, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}
