// The database of a running program, asked by the test itself: for what no page can do or tell.

import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import pg from 'pg';
import { loadSecrets } from '#lib/machine/secrets.ts';
import { findDatabasePlace } from '#lib/start/database-place.ts';
import { databaseUrl } from '#lib/start/embedded-database.ts';

const PROJECT = resolve(import.meta.dirname, '../../..');

/** Runs statements as the owner of the database that belongs to this data folder. */
export async function inDatabase<T>(dataDir: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const { dataFolder } = findDatabasePlace(PROJECT, join(dataDir, 'database'));
  const port = Number(readFileSync(join(dataFolder, 'postmaster.pid'), 'utf8').split('\n')[3]);
  const client = new pg.Client({
    connectionString: databaseUrl(port, loadSecrets(dataDir).databasePassword),
  });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}
