// What must be done to the database before web and worker start: migrations, the queue's tables,
// sample data on request, the setup link. A process of its own, because the schema engine keeps a
// lock until its process ends.

import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { config } from '#lib/machine/config.ts';
import { installQueue } from '#lib/queue/install-queue.ts';
import { closeDatabase, databaseAddress } from '#lib/store/client.ts';
import { applyMigrations } from '#lib/store/schema-engine.ts';
import { offerSetup } from '#lib/usecases/people/offer-setup.ts';

/** What the supervisor learns. */
export interface Prepared {
  readonly setupToken: string | null;
  readonly applied: readonly string[];
  readonly remark: string | null;
}

const root = join(import.meta.dirname, '../..');
const migrations = readdirSync(join(root, 'prisma/migrations')).filter((name) => /^\d{4}_/.test(name));

/** Has this database everything already? Asked of the database itself; the stamp only knows of the queue. */
async function isUpToDate(url: string, stampFile: string, stamp: string): Promise<boolean> {
  if (!existsSync(stampFile) || readFileSync(stampFile, 'utf8') !== stamp) return false;
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const { rows } = await client.query<{ migration_name: string }>(
      'select migration_name from _prisma_migrations where finished_at is not null and rolled_back_at is null',
    );
    await client.query('select 1 from graphile_worker.migrations limit 1');
    return migrations.every((name) => rows.some((row) => row.migration_name === name));
  } catch {
    return false;
  } finally {
    await client.end();
  }
}

async function prepare(): Promise<Prepared> {
  const url = databaseAddress();
  const hash = createHash('sha256').update(readFileSync(join(root, 'package-lock.json')));
  for (const name of migrations)
    hash.update(readFileSync(join(root, 'prisma/migrations', name, 'migration.sql')));
  const stamp = hash.digest('hex');
  const stampFile = join(config().dataDir, 'prepared');
  let applied: readonly string[] = [];
  if (!(await isUpToDate(url, stampFile, stamp))) {
    applied = await applyMigrations(url);
    await installQueue(url);
    writeFileSync(stampFile, stamp, { mode: 0o600 });
  }
  let remark: string | null = null;
  if (process.argv.includes('--sample')) {
    const { askForSample } = await import('#lib/usecases/puzzles/make-sample.ts');
    const asked = await askForSample({ memberId: null });
    remark = asked.ok
      ? 'Sample data is being made: an invented show with three episodes.'
      : 'Sample data was refused: there are episodes already.';
  }
  const setupToken = await offerSetup();
  await closeDatabase();
  return { setupToken, applied, remark };
}

prepare().then(
  (prepared) => process.stdout.write(JSON.stringify(prepared), () => process.exit(0)),
  (error: unknown) => {
    process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
    process.exit(1);
  },
);
