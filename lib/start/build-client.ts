// Generates the database client from the schema. The generator wants to download an engine that it
// does not need; any existing program in its place keeps it quiet.

import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { buildOnce } from './inner/build-stamp.ts';
import { runStep } from './inner/run-step.ts';

/** Writes the client into the store room; false where it was up to date. */
export function buildClient(root: string): Promise<boolean> {
  const files = readdirSync(join(root, 'prisma/schema')).map((name) => `prisma/schema/${name}`);
  files.push('prisma.config.ts', 'node_modules/prisma/package.json');
  const outputs = ['lib/store/generated/client.ts'];
  return buildOnce({ root, name: 'prisma', files, outputs }, () =>
    runStep(root, ['node_modules/prisma/build/index.js', 'generate', '--no-hints'], {
      PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
      PRISMA_HIDE_UPDATE_MESSAGE: '1',
      CHECKPOINT_DISABLE: '1',
    }),
  );
}
