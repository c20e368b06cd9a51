// A database of its own for a test file, cloned from the prepared one in a tenth of a second.

import { spawn } from 'node:child_process';
import { closeSync, existsSync, mkdirSync, mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll } from 'vitest';
import { databaseUrl } from '#lib/start/embedded-database.ts';
import { closeDatabase } from '#lib/store/client.ts';
import { PROJECT } from './start-database.ts';

interface ServerState {
  readonly port: number;
  readonly password: string;
  readonly failure?: string;
}

// All files of a run are children of the same process, and so share one server.
const run = process.ppid;
const stateFile = join(PROJECT, '.cache', `test-server-${run}.json`);

/** The server of this run; the first to ask starts it. */
async function findServer(): Promise<ServerState> {
  mkdirSync(join(PROJECT, '.cache'), { recursive: true });
  try {
    closeSync(openSync(`${stateFile}.asked`, 'wx'));
    const keeper = join(PROJECT, 'tests/support/database-keeper.ts');
    spawn(process.execPath, [keeper, String(run), stateFile], {
      detached: true,
      stdio: 'ignore',
      env: { ...process.env, NODE_OPTIONS: '' },
    }).unref();
  } catch {
    // Another file of this run has asked.
  }
  for (let tries = 0; tries < 1200; tries += 1) {
    if (existsSync(stateFile)) {
      rmSync(`${stateFile}.asked`, { force: true });
      const state: ServerState = JSON.parse(readFileSync(stateFile, 'utf8'));
      if (state.failure !== undefined) throw new Error(state.failure);
      return state;
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('The test database did not start within two minutes.');
}

/** What a test file may need of its database. */
export interface TestDatabase {
  url: string;
  dataDir: string;
}

let count = 0;

/** Makes a database by hand; `drop` removes it. */
export async function cloneDatabase(): Promise<TestDatabase & { drop: () => Promise<void> }> {
  const server = await findServer();
  count += 1;
  const name = `test_${process.pid}_${count}`;
  const admin = new pg.Client({ connectionString: databaseUrl(server.port, server.password, 'postgres') });
  await admin.connect();
  await admin.query(`create database "${name}" template prepared strategy wal_log`);
  const dataDir = mkdtempSync(join(PROJECT, '.cache', 'test-data-'));
  const drop = async () => {
    await admin.query(`drop database "${name}" with (force)`);
    await admin.end();
    rmSync(dataDir, { recursive: true, force: true });
  };
  return { url: databaseUrl(server.port, server.password, name), dataDir, drop };
}

/** Gives this test file an empty database of its own, and points the program at it. */
export function givenDatabase(): TestDatabase {
  const database: TestDatabase = { url: '', dataDir: '' };
  let drop = async () => {};
  beforeAll(async () => {
    const made = await cloneDatabase();
    Object.assign(database, { url: made.url, dataDir: made.dataDir });
    drop = made.drop;
    process.env.DATABASE_URL = made.url;
    process.env.DATA_DIR = made.dataDir;
    process.env.TAILPIECE_LOG_LEVEL = 'silent';
  });
  afterAll(async () => {
    await closeDatabase();
    await drop();
  });
  return database;
}
