// `npm start` under the pinned Node: database, build, preparation, then web and worker, in this
// order; watches all three and stops them in the reverse order.

import { spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { type Config, configSentence, parseConfig } from '#lib/machine/config.ts';
import { loadSecrets } from '#lib/machine/secrets.ts';
import { findDatabasePlace } from './database-place.ts';
import { isPortFree } from './embedded-database.ts';
import { announceInLock, dropLock, takeLock } from './lock-file.ts';
import { type WatchedChild, watchChild } from './watched-child.ts';
import { type WatchedDatabase, watchDatabase } from './watched-database.ts';

const root = join(import.meta.dirname, '../..');
const say = (line: string) => console.log(line);

function stopWith(sentence: string, status: number): never {
  console.error(sentence);
  process.exit(status);
}

function readSettings(): Config {
  const read = parseConfig(process.env, { cores: availableParallelism(), folder: root });
  return read.ok ? read.value : stopWith(configSentence(read.reason), 2);
}

const wrongWord = process.argv.slice(2).find((word) => word !== '--sample');
if (wrongWord !== undefined)
  stopWith(`"${wrongWord}" is not understood. Expected nothing, or --sample for sample data.`, 2);
const settings = readSettings();
const lockFile = join(settings.dataDir, 'start.lock');
const logFile = join(settings.dataDir, 'tailpiece.log');
const running: { database: WatchedDatabase | null; web: WatchedChild | null; worker: WatchedChild | null } = {
  database: null,
  web: null,
  worker: null,
};

/** Runs a script of ours to its end and gives what it printed. */
function runScript(script: string, words: readonly string[], env: Record<string, string>): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [join(root, script), ...words], {
      cwd: root,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let out = '';
    let trouble = '';
    child.stdout.on('data', (chunk) => {
      out += chunk;
    });
    child.stderr.on('data', (chunk) => {
      trouble += chunk;
    });
    child.once('close', (code) =>
      code === 0 ? resolve(out) : reject(new Error(`${script} failed:\n${trouble}`)),
    );
  });
}

let isStopping = false;
async function stopEverything(status: number): Promise<never> {
  if (isStopping) process.exit(1);
  isStopping = true;
  await Promise.all([running.web?.stop(10_000), running.worker?.stop(10_000)]);
  await running.database?.stop();
  dropLock(lockFile);
  process.exit(status);
}

/** The first port from the wanted one upwards that can be had. */
async function findPort(): Promise<number> {
  for (let port = settings.port; port < settings.port + 100 && port < 65536; port += 1) {
    if (!(await isPortFree(port, settings.host))) continue;
    if (port !== settings.port) say(`Port ${settings.port} is taken; using ${port}.`);
    return port;
  }
  return stopWith(`No port from ${settings.port} to ${settings.port + 99} is free. Set PORT to another.`, 1);
}

async function startDatabase(): Promise<string> {
  if (settings.databaseUrl !== null) return settings.databaseUrl;
  const place = findDatabasePlace(root, join(settings.dataDir, 'database'));
  if (place.remark !== null) say(place.remark);
  const password = loadSecrets(settings.dataDir).databasePassword;
  running.database = await watchDatabase({
    place,
    password,
    logFile: join(settings.dataDir, 'database.log'),
    say,
    giveUp: (sentence) => {
      console.error(sentence);
      void stopEverything(1);
    },
  });
  return running.database.url;
}

async function start(): Promise<void> {
  mkdirSync(settings.dataDir, { recursive: true, mode: 0o711 });
  const holder = takeLock(lockFile, (command) => command.includes('supervisor.ts'));
  if (holder !== null)
    stopWith(
      `Tailpiece runs already${holder.publicUrl === null ? '' : ` at ${holder.publicUrl}`} (process ${holder.pid}). Stop it there with Ctrl-C, or with: kill ${holder.pid}`,
      1,
    );
  const built = runScript('lib/start/build.ts', [], {}).then((out) => process.stdout.write(out));
  const database = startDatabase();
  // Both are awaited together, so that neither can fail unheard.
  const [, databaseUrl] = await Promise.all([built, database]);
  const port = await findPort();
  const host = settings.host.includes(':') ? `[${settings.host}]` : settings.host;
  const publicUrl = process.env.PUBLIC_URL ? settings.publicUrl : `http://${host}:${port}`;
  const env: Record<string, string> = {
    NODE_ENV: 'production',
    DATABASE_URL: databaseUrl,
    PUBLIC_URL: publicUrl,
    PORT: String(port),
    HOST: settings.host,
    DATA_DIR: settings.dataDir,
  };
  const prepared: unknown = JSON.parse(await runScript('lib/start/prepare.ts', process.argv.slice(2), env));
  const told = (name: string) => {
    const value: unknown =
      typeof prepared === 'object' && prepared !== null ? Reflect.get(prepared, name) : null;
    return typeof value === 'string' ? value : null;
  };
  const remark = told('remark');
  if (remark !== null) say(remark);
  const giveUp = (name: string) => {
    console.error(`The ${name} process ended five times at its start; ${logFile} says why.`);
    void stopEverything(1);
  };
  const child = { env, logFile, say, giveUp };
  running.web = watchChild({ ...child, name: 'web', script: join(root, 'lib/start/web.ts') });
  running.worker = watchChild({ ...child, name: 'worker', script: join(root, 'lib/jobs/worker.ts') });
  await Promise.all([running.web.ready, running.worker.ready]);
  announceInLock(lockFile, publicUrl);
  const setupToken = told('setupToken');
  say(`Viewers: ${publicUrl}`);
  say(
    setupToken === null
      ? `Desk:    ${publicUrl}/desk`
      : `Desk:    ${publicUrl}/desk/setup#${setupToken} (once, within 30 minutes)`,
  );
  say('Stop:    Ctrl-C');
}

process.on('SIGINT', () => void stopEverything(0));
process.on('SIGTERM', () => void stopEverything(0));
process.on('SIGHUP', () => void stopEverything(0));
process.on('disconnect', () => void stopEverything(1));

start().catch(async (error: unknown) => {
  console.error(error instanceof Error ? error.message : String(error));
  await stopEverything(1);
});
