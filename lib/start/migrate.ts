// The migration step, a process of its own: the schema engine keeps a lock until its process ends.

import { installQueue } from '#lib/queue/install-queue.ts';
import { applyMigrations } from '#lib/store/schema-engine.ts';

const url = process.env.DATABASE_URL ?? '';
try {
  const applied = await applyMigrations(url);
  await installQueue(url);
  console.log(JSON.stringify({ applied }));
  process.exit(0);
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exit(1);
}
