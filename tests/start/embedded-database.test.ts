import { chmodSync, existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, describe, expect, test } from 'vitest';
import { canPass, findDatabasePlace } from '#lib/start/database-place.ts';
import {
  databaseUrl,
  ensureDatabase,
  isPortFree,
  startDatabase,
  stopDatabase,
} from '#lib/start/embedded-database.ts';
import { isAlive, waitForEnd } from '#lib/start/processes.ts';
import { watchDatabase } from '#lib/start/watched-database.ts';
import { PROJECT } from '../support/start-database.ts';

const root = mkdtempSync(join(tmpdir(), 'tailpiece-start-'));
chmodSync(root, 0o755);
afterAll(() => rmSync(root, { recursive: true, force: true }));

const password = 'for-this-test';
const place = findDatabasePlace(PROJECT, join(root, 'data'), join(root, 'elsewhere'));
const wishes = { place, password, logFile: join(root, 'log'), port: null };

async function ask(port: number, sql: string): Promise<unknown[]> {
  const client = new pg.Client({ connectionString: databaseUrl(port, password) });
  await client.connect();
  try {
    return (await client.query(sql)).rows;
  } finally {
    await client.end();
  }
}

describe('the embedded database', () => {
  test('keeps its data over a stop, a kill and a taken port; a living one is adopted', async () => {
    const first = await startDatabase(wishes);
    await ensureDatabase(first.port, password);
    await ask(first.port, 'create table kept (n int)');
    const adopted = await startDatabase(wishes);
    expect([adopted.pid, adopted.port, adopted.wasAdopted]).toEqual([first.pid, first.port, true]);

    process.kill(first.pid, 'SIGKILL');
    expect(await waitForEnd(first.pid, 5000)).toBe(true);
    expect(existsSync(join(place.dataFolder, 'postmaster.pid')), 'a stale pid file is left').toBe(true);
    const second = await startDatabase({ ...wishes, port: first.port });
    expect(second.wasAdopted).toBe(false);
    expect(await ask(second.port, 'select count(*)::int as n from kept')).toEqual([{ n: 0 }]);
    expect(await isPortFree(second.port)).toBe(false);

    const other = { ...wishes, place: { ...place, dataFolder: join(root, 'other') } };
    const third = await startDatabase({ ...other, port: second.port });
    expect(third.port).not.toBe(second.port);
    await stopDatabase(third.pid);
    await stopDatabase(second.pid);
    expect([isAlive(second.pid), isAlive(third.pid)]).toEqual([false, false]);
  }, 120_000);

  test('that dies is started again on the same port, and that is said', async () => {
    const said: string[] = [];
    const watched = await watchDatabase({
      ...wishes,
      say: (line) => said.push(line),
      giveUp: (line) => said.push(line),
    });
    const before = watched.pid();
    process.kill(before, 'SIGKILL');
    await expect
      .poll(() => said.join(), { timeout: 60_000 })
      .toMatch(/had ended and was started again in \d+ ms/);
    expect(watched.pid()).not.toBe(before);
    await watched.stop();
    expect(isAlive(watched.pid())).toBe(false);
  }, 120_000);
});

test("a folder that the database's user cannot enter is found, and another place taken", () => {
  const closed = join(root, 'closed');
  mkdirSync(join(closed, 'within'), { recursive: true });
  chmodSync(closed, 0o700);
  const stranger = { uid: 54_321, gid: 54_321 };
  expect(canPass(join(closed, 'within/file'), stranger)).toBe(false);
  chmodSync(closed, 0o711);
  expect(canPass(join(closed, 'within/file'), stranger)).toBe(canPass(join(root, 'file'), stranger));
});
