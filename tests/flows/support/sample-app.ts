import { setTimeout as sleep } from 'node:timers/promises';
import { type RunningApp, startRunningApp } from '../../support/running-app.ts';
import { inDatabase } from './app-database.ts';

const MADE_MS = 180_000;

/**
 * Starts the program with its sample data and waits until the worker has made all of it. Its puzzles come one by
 * one, and each is open for a moment before it is over: no page tells the last open one from the others.
 */
export async function startSampleApp(): Promise<RunningApp> {
  const app = await startRunningApp(['--sample']);
  try {
    await inDatabase(app.dataDir, async (client) => {
      const until = Date.now() + MADE_MS;
      for (;;) {
        const { rowCount } = await client.query("select 1 from log where kind = 'sample-made'");
        if (rowCount === 1) return;
        if (Date.now() > until) throw new Error(`no sample data within ${MADE_MS / 1000} s`);
        await sleep(200);
      }
    });
    return app;
  } catch (error) {
    await app.stop();
    throw error;
  }
}
