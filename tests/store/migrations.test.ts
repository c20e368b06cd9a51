import { expect, test } from 'vitest';
import { db } from '#lib/store/client.ts';
import { readSchemaText } from '#lib/store/schema-engine.ts';
import { givenDatabase } from '../support/database.ts';

givenDatabase();

/** Every "table.column" that the schema names. */
function columnsOfSchema(): string[] {
  const models = readSchemaText().matchAll(/^model \w+ \{\n([\s\S]*?)^\}/gm);
  return [...models].flatMap(([, body = '']) => {
    const table = /@@map\("(\w+)"\)/.exec(body)?.[1];
    const fields = body.matchAll(/^ {2}(\w+)\s+(?:Int|String|DateTime|Boolean|Json|BigInt|Bytes)\b(.*)$/gm);
    return [...fields].map(
      ([, field, rest = '']) => `${table}.${/[^@]@map\("(\w+)"\)/.exec(rest)?.[1] ?? field}`,
    );
  });
}

test('all migrations one after another make exactly the tables and columns of the schema', async () => {
  const rows = await db().$queryRaw<{ name: string }[]>`
    select table_name || '.' || column_name as name from information_schema.columns
    where table_schema = 'public' and table_name <> '_prisma_migrations'`;
  const found = rows.map((row) => row.name).sort();
  expect(found.length).toBeGreaterThan(100);
  expect(found).toEqual(columnsOfSchema().sort());
});
