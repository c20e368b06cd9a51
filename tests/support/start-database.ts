// Global set-up of the test run: one real PostgreSQL server with a folder of its own, and a
// template database with every migration applied. Started only when a test file asks for it.

import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { findDatabasePlace } from '#lib/start/database-place.ts';
import {
  databaseUrl,
  ensureDatabase,
  type RunningDatabase,
  startDatabase,
  stopDatabase,
} from '#lib/start/embedded-database.ts';

/** What a test needs to know of the server. */
export interface TestServer extends RunningDatabase {
  readonly password: string;
}

export const PROJECT = resolve(import.meta.dirname, '../..');

/** Starts a server in a new folder, with a template database `prepared`. The caller stops it. */
export async function startTestServer(): Promise<{ server: TestServer; stop: () => Promise<void> }> {
  const cache = join(PROJECT, '.cache');
  mkdirSync(cache, { recursive: true });
  const root = mkdtempSync(join(cache, 'test-database-'));
  const elsewhere = join(tmpdir(), 'tailpiece-tests');
  const place = findDatabasePlace(PROJECT, join(root, 'data'), elsewhere);
  if (place.user !== null) spawnSync('chmod', ['711', root]);
  const password = 'only-for-tests';
  const settings = ['fsync=off', 'max_connections=100'];
  const wishes = { place, password, logFile: join(root, 'log'), port: null, settings };
  const database = await startDatabase(wishes);
  writeFileSync(join(root, 'pid'), String(database.pid));
  await ensureDatabase(database.port, password, 'prepared');
  const url = databaseUrl(database.port, password, 'prepared');
  const migrated = spawnSync(process.execPath, [join(PROJECT, 'lib/start/migrate.ts')], {
    env: { ...process.env, DATABASE_URL: url },
    encoding: 'utf8',
  });
  if (migrated.status !== 0) throw new Error(`The migrations failed: ${migrated.stderr}`);
  const stop = async () => {
    await stopDatabase(database.pid);
    rmSync(root, { recursive: true, force: true });
    if (existsSync(place.dataFolder)) rmSync(place.dataFolder, { recursive: true, force: true });
  };
  return { server: { ...database, password }, stop };
}
