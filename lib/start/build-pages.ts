// Builds the pages. Types are checked by `npm test`, not here: a start must not depend on the tests'.

import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { buildOnce } from './inner/build-stamp.ts';
import { runStep } from './inner/run-step.ts';

const NOT_IN_PAGES = /^lib\/(start|cli|jobs|engine\/kernel)\//;

/** Builds what the web process serves; false where it was up to date. */
export function buildPages(root: string): Promise<boolean> {
  const sources = ['app', 'lib', 'public/built'].filter((folder) => existsSync(join(root, folder)));
  const files = sources.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) =>
        join(entry.parentPath, entry.name)
          .slice(root.length + 1)
          .replaceAll('\\', '/'),
      )
      .filter((file) => !NOT_IN_PAGES.test(file) && !file.endsWith('.draft')),
  );
  const single = ['next.config.ts', 'proxy.ts', 'tsconfig.json', 'package-lock.json'];
  files.push(...single.filter((file) => existsSync(join(root, file))));
  return buildOnce({ root, name: 'next', files, outputs: ['.next/BUILD_ID'] }, () =>
    runStep(root, ['node_modules/next/dist/bin/next', 'build'], {
      NODE_ENV: 'production',
      NEXT_TELEMETRY_DISABLED: '1',
    }),
  );
}
