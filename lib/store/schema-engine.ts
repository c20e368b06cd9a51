// Prisma's schema engine as WebAssembly: migrations without a downloaded binary.

import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PrismaPg } from '@prisma/adapter-pg';
import type {
  SqlDriverAdapter,
  SqlMigrationAwareDriverAdapterFactory,
  SqlResultSet,
} from '@prisma/driver-adapter-utils';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import type { MigrationDirectory, SchemaEngine } from '@prisma/schema-engine-wasm/schema_engine_bg';

const PROJECT = resolve(import.meta.dirname, '../..');
const SCHEMA_FOLDER = join(PROJECT, 'prisma/schema');
const MIGRATIONS_FOLDER = join(PROJECT, 'prisma/migrations');

/** The schema as it was when the last migration was made; the next one starts from here. */
export const MIGRATED_SCHEMA = join(MIGRATIONS_FOLDER, 'migrated.prisma');

const NO_FILTER = { externalTables: [], externalEnums: [] };

let engineModule: Promise<typeof import('@prisma/schema-engine-wasm/schema_engine_bg')> | null = null;

// Once a process: a second instance would share the module's state and corrupt its memory.
async function loadEngine() {
  Object.assign(globalThis, { PRISMA_WASM_PANIC_REGISTRY: { set_message() {} } });
  const entry = import.meta.resolve('@prisma/schema-engine-wasm/schema_engine_bg');
  const loaded = await import('@prisma/schema-engine-wasm/schema_engine_bg');
  const bytes = readFileSync(fileURLToPath(entry.replace(/\.js$/, '.wasm')));
  const { instance } = await WebAssembly.instantiate(bytes, {
    './schema_engine_bg.js': Object.fromEntries(Object.entries(loaded)),
  });
  loaded.__wbg_set_wasm(instance.exports);
  const start = instance.exports.__wbindgen_start;
  if (typeof start === 'function') start();
  return loaded;
}

async function openEngine(adapter: SqlMigrationAwareDriverAdapterFactory): Promise<SchemaEngine> {
  engineModule ??= loadEngine();
  const { SchemaEngine } = await engineModule;
  const bound = bindMigrationAwareSqlAdapterFactory(adapter);
  return SchemaEngine.new({ datamodels: undefined }, () => {}, bound);
}

// The adapter cuts a script at every semicolon, those in function bodies and comments included.
// Sent whole, it is one implicit transaction besides: a migration is applied entirely or not at all.
function sendScriptsWhole(url: string): SqlMigrationAwareDriverAdapterFactory {
  const factory = new PrismaPg({ connectionString: url });
  const connect = async () => {
    const connection = await factory.connect();
    const executeScript = async (script: string) => {
      await connection.underlyingDriver().query(script);
    };
    return Object.assign(connection, { executeScript });
  };
  return { provider: 'postgres', adapterName: factory.adapterName, connect, connectToShadowDb: connect };
}

// Comparing two texts asks the database nothing, but the engine wants a connection all the same.
function connectToNothing(): SqlMigrationAwareDriverAdapterFactory {
  const answer: SqlResultSet = { columnNames: [], columnTypes: [], rows: [] };
  const connection: SqlDriverAdapter = {
    provider: 'postgres',
    adapterName: 'nothing',
    queryRaw: async () => answer,
    executeRaw: async () => 0,
    executeScript: async () => {},
    getConnectionInfo: () => ({ schemaName: 'public', supportsRelationJoins: true }),
    startTransaction: () => Promise.reject(new Error('There is no database behind a comparison of texts.')),
    dispose: async () => {},
  };
  return {
    provider: 'postgres',
    adapterName: 'nothing',
    connect: async () => connection,
    connectToShadowDb: async () => connection,
  };
}

/** The text of the schema files of today, in one piece. */
export function readSchemaText(): string {
  return readdirSync(SCHEMA_FOLDER)
    .filter((name) => name.endsWith('.prisma'))
    .sort()
    .map((name) => readFileSync(join(SCHEMA_FOLDER, name), 'utf8'))
    .join('\n');
}

/** The SQL that leads from one schema text to another; null as start means an empty database. */
export async function writeMigrationSql(from: string | null, to: string): Promise<string> {
  const engine = await openEngine(connectToNothing());
  const datamodel = (content: string) => ({
    tag: 'schemaDatamodel' as const,
    files: [{ path: 'schema.prisma', content }],
  });
  const { stdout } = await engine.diff({
    from: from === null ? { tag: 'empty' } : datamodel(from),
    to: datamodel(to),
    script: true,
    exitCode: null,
    filters: NO_FILTER,
  });
  return stdout ?? '';
}

function readMigrations(): MigrationDirectory[] {
  return readdirSync(MIGRATIONS_FOLDER, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
    .map((path) => ({
      path,
      migrationFile: {
        path: 'migration.sql',
        content: { tag: 'ok', value: readFileSync(join(MIGRATIONS_FOLDER, path, 'migration.sql'), 'utf8') },
      },
    }));
}

/**
 * Applies what the database lacks and returns the names of it. The engine's connection keeps an
 * advisory lock until the process ends, so only a short process of its own may call this.
 */
export async function applyMigrations(url: string): Promise<readonly string[]> {
  const engine = await openEngine(sendScriptsWhole(url));
  const { appliedMigrationNames } = await engine.applyMigrations({
    migrationsList: {
      baseDir: MIGRATIONS_FOLDER,
      lockfile: { path: 'migration_lock.toml', content: 'provider = "postgresql"\n' },
      shadowDbInitScript: '',
      migrationDirectories: readMigrations(),
    },
    filters: NO_FILTER,
  });
  return appliedMigrationNames;
}
