// A process of the engine pool as the pool sees it: it takes orders, says what its thread says, and is
// lost once, with a word on why.

import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { ProcessMessage, ProcessOrder, ThreadMessage } from './thread-messages.ts';

const PROGRAM = fileURLToPath(new URL('../engine-process.ts', import.meta.url));
/** Compiled code is kept from process to process: without it half a second of work goes before the first job. */
const COMPILED = fileURLToPath(new URL('../../../.cache/compiled', import.meta.url));
/** Of what a dying process prints, so many characters are looked at. */
const MOST_LAST_WORDS = 10_000;

/** A running process. */
export interface EngineMember {
  send(order: ProcessOrder): void;
  /** Whether this process must be waited for before ours may end. */
  keepAlive(isNeeded: boolean): void;
  /** Kills it; resolves when it is gone. */
  kill(): Promise<void>;
}

/** Starts a process; `lost` is called at most once. Nothing of our environment but the path is handed on. */
export function startEngineMember(
  hear: (message: ThreadMessage) => void,
  lost: (detail: string) => void,
): EngineMember {
  const child = fork(PROGRAM, {
    execArgv: [],
    env: environment(),
    serialization: 'advanced',
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
  });
  let isLost = false;
  const lose = (detail: string): void => {
    if (!isLost) lost(detail);
    isLost = true;
  };
  const lastWords = keepLastWords(child);
  const isGone = new Promise<void>((resolve) => {
    child.once('error', () => resolve());
    child.once('exit', () => resolve());
  });
  child.once('error', (fault) => lose(fault.message));
  child.once('exit', (code, signal) => {
    lose(`the process ended with ${signal ?? `status ${code}`}${lastWords()}`);
  });
  child.on('message', (message: ProcessMessage) => {
    if (message.kind === 'lost') lose(message.detail);
    else if (!isLost) hear(message);
  });
  return {
    send: (order) => {
      // Where it has gone, its end tells the rest.
      if (child.connected) child.send(order, () => {});
    },
    keepAlive: (isNeeded) => keepAlive(child, isNeeded),
    async kill() {
      keepAlive(child, true);
      child.kill('SIGKILL');
      await isGone;
    },
  };
}

function environment(): NodeJS.ProcessEnv {
  const { PATH = '', NODE_COMPILE_CACHE = COMPILED } = process.env;
  return { PATH, NODE_ENV: 'production', NODE_COMPILE_CACHE };
}

function keepAlive(child: ChildProcess, isNeeded: boolean): void {
  if (isNeeded) {
    child.ref();
    child.channel?.ref();
  } else {
    child.unref();
    child.channel?.unref();
  }
}

/** What it said of a fatal error on its last lines. */
function keepLastWords(child: ChildProcess): () => string {
  let words = '';
  child.stderr?.on('data', (chunk: Buffer) => {
    words = (words + chunk.toString('latin1')).slice(-MOST_LAST_WORDS);
  });
  // A pipe that is read keeps a process alive, too.
  if (child.stderr !== null && 'unref' in child.stderr && typeof child.stderr.unref === 'function') {
    child.stderr.unref();
  }
  return () => {
    const fatal = /FATAL ERROR: ([^\n]*)/.exec(words)?.[1];
    return fatal === undefined ? '' : `: ${fatal}`;
  };
}
