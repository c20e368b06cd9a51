import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { MIGRATED_SCHEMA, readSchemaText, writeMigrationSql } from '#lib/store/schema-engine.ts';

describe('migrations and schema', () => {
  test('agree: the difference between the schema last migrated and the schema of today is empty', async () => {
    expect(await writeMigrationSql(readFileSync(MIGRATED_SCHEMA, 'utf8'), readSchemaText())).toContain(
      'This is an empty migration',
    );
  });

  test('would be found to differ: a column more is an ALTER TABLE', async () => {
    const today = readSchemaText();
    const changed = today.replace('model Show {', 'model Show {\n  /// Test.\n  extra Int?');
    expect(await writeMigrationSql(today, changed)).toMatch(
      /ALTER TABLE "show" ADD COLUMN\s+"extra" INTEGER/,
    );
  });

  test('the first migration begins with nothing: it makes every table it names', () => {
    const first = readFileSync(
      new URL('../../prisma/migrations/0001_tables/migration.sql', import.meta.url),
      'utf8',
    );
    const made = new Set([...first.matchAll(/CREATE TABLE "(\w+)"/g)].map(([, table]) => table));
    const altered = [...first.matchAll(/ALTER TABLE "(\w+)"/g)].map(([, table]) => table);
    expect(made.size).toBeGreaterThan(20);
    expect(altered.filter((table) => !made.has(table))).toEqual([]);
  });

  test('every column of the schema says what it means', () => {
    const lines = readSchemaText().split('\n');
    const bare = lines.filter((line, index) => {
      const isColumn = /^ {2}[a-z]\w*\s+(Int|String|DateTime|Boolean|Json|BigInt|Bytes)\b/.test(line);
      return isColumn && !lines[index - 1]?.trim().startsWith('///');
    });
    expect(bare).toEqual([]);
  });
});
