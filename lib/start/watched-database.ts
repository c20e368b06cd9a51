// The embedded database, watched: where it dies it is started again on the same port, and said.

import type { DatabasePlace } from './database-place.ts';
import { databaseUrl, ensureDatabase, startDatabase, stopDatabase } from './embedded-database.ts';
import { isAlive } from './processes.ts';

export interface WatchedDatabase {
  readonly url: string;
  pid(): number;
  stop(): Promise<void>;
}

export interface WatchWishes {
  readonly place: DatabasePlace;
  readonly password: string;
  readonly logFile: string;
  readonly say: (line: string) => void;
  readonly giveUp: (sentence: string) => void;
}

const LOOK_EVERY_MS = 500;

/** Starts or adopts the server and looks after it until stopped. */
export async function watchDatabase(wishes: WatchWishes): Promise<WatchedDatabase> {
  const { place, password, logFile } = wishes;
  let current = await startDatabase({ place, password, logFile, port: null });
  if (current.wasAdopted) wishes.say('The database of the last start still ran and was taken over.');
  await ensureDatabase(current.port, password);
  const port = current.port;
  let isStopping = false;
  let isBusy = false;

  const look = async () => {
    if (isStopping || isBusy || isAlive(current.pid)) return;
    isBusy = true;
    const start = Date.now();
    try {
      current = await startDatabase({ place, password, logFile, port });
      if (current.port !== port) throw new Error(`port ${port} was taken meanwhile`);
      wishes.say(`The database had ended and was started again in ${Date.now() - start} ms.`);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      wishes.giveUp(`The database ended and cannot be started again: ${why}`);
    } finally {
      isBusy = false;
    }
  };
  const timer = setInterval(() => void look(), LOOK_EVERY_MS);

  return {
    url: databaseUrl(port, password),
    pid: () => current.pid,
    stop: async () => {
      isStopping = true;
      clearInterval(timer);
      await stopDatabase(current.pid);
    },
  };
}
