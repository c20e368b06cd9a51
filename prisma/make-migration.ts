// Writes the next migration: the difference between the schema last migrated and the schema of
// today. `node prisma/make-migration.ts NAME`. Read what it wrote before committing it.

import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { MIGRATED_SCHEMA, readSchemaText, writeMigrationSql } from '#lib/store/schema-engine.ts';

const name = process.argv[2] ?? '';
if (!/^[a-z0-9_]+$/.test(name)) {
  console.error('Expected a name of a-z, 0-9 and _: node prisma/make-migration.ts add_prizes');
  process.exit(2);
}

const today = readSchemaText();
const before = existsSync(MIGRATED_SCHEMA) ? readFileSync(MIGRATED_SCHEMA, 'utf8') : null;
const sql = await writeMigrationSql(before, today);
if (sql.trim() === '' || sql.includes('This is an empty migration')) {
  console.log('The schema has not changed since the last migration.');
} else {
  const root = resolve(import.meta.dirname, 'migrations');
  const count = readdirSync(root).filter((entry) => /^\d{4}_/.test(entry)).length;
  const folder = join(root, `${String(count + 1).padStart(4, '0')}_${name}`);
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'migration.sql'), sql);
  writeFileSync(MIGRATED_SCHEMA, today);
  console.log(`Wrote ${folder}`);
}
process.exit(0);
